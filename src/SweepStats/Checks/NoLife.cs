using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Sweeps that stand at one level over the whole band, or at the bottom of what the display shows.</summary>
internal sealed class NoLife : ICheck
{
    // A set-up with cables and antennas is never as flat as a tenth of a dB over a dozen frequencies (common practice, no
    // source); on a coarser display it may look so.
    private const double FinestThatHidesDb = 0.1;

    /// <inheritdoc/>
    public string Code => "no-life";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => seen.Campaign.Grid.Count >= BottomReadings.FewestToMove ? null
        : $"it takes {BottomReadings.FewestToMove} frequencies to tell that a level does not move";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        SweepBlock[] blocks = [.. seen.Campaign.Covered.Select(c => c.Block), seen.Campaign.Reference];
        bool coarse = DisplayStep.OfVarying(blocks) > FinestThatHidesDb;
        if (BottomReadings.StandsStill(seen.Campaign.Reference) && !seen.Campaign.IsNormalised(seen.Campaign.Reference))
        {
            yield return Still(seen, null, seen.Campaign.Reference, coarse);
        }

        foreach ((SpecimenBlock specimen,
            ImmutableArray<bool> bottom) in seen.Campaign.Covered.Zip(seen.Clipping.CoveredAtBottom))
        {
            if (BottomReadings.StandsStill(specimen.Block))
            {
                yield return Still(seen, specimen.Name, specimen.Block, coarse);
            }
            else if (bottom.Contains(true))
            {
                yield return AtBottom(seen, specimen, bottom);
            }
        }
    }

    private Finding Still(Evidence seen, SpecimenName? specimen, SweepBlock sweeps, bool coarse) => new()
    {
        Code = Code,
        Severity = coarse ? Severity.Warning : Severity.Fault,
        Role = specimen is null ? SweepRole.Reference : SweepRole.Covered,
        Specimen = specimen,
        Message = $"{(specimen is null ? "The reference" : "The covered level")} stands at "
            + $"{Level(seen, sweeps[0][0])} at all {sweeps.PointCount} frequencies"
            + (coarse ? ": a display with finer steps would show whether it lives."
                : ": no set-up is as flat as that, so these are no readings of it."),
        Basis = string.Create(Amount.Print, $"{Amount.Count(sweeps.SweepCount, "sweep", "sweeps")}, each without any "
            + $"difference between its {sweeps.PointCount} readings; told from {BottomReadings.FewestToMove} frequencies "
            + $"on, a fault where other sweeps show steps of {FinestThatHidesDb} dB or finer."),
        NextStep = "Look whether source and receiver were connected and the file holds readings, and take the sweeps again. A "
            + "reference that was divided by itself belongs in dB.",
    };

    private Finding AtBottom(Evidence seen, SpecimenBlock specimen, ImmutableArray<bool> bottom) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = SweepRole.Covered,
        Specimen = specimen.Name,
        Where = Stretches.Where(seen.Campaign.Grid, f => bottom[f]),
        Message = $"At {Amount.OutOf(bottom.Count(b => b), bottom.Length)} covered sweeps stand at the lowest level shown, "
            + $"{Level(seen, specimen.Block.LowestDb)}: the display ends there, and the specimen may shield more than is shown.",
        Basis = string.Create(Amount.Print,
            $"{Enumerable.Range(0, specimen.Block.SweepCount).Sum(j => Standing(specimen.Block, j))} readings at that level, "
                + $"and none below; so many, or so many side by side, come by chance less than once in 1000 campaigns."),
        NextStep = "Lower the bottom of the display (a lower reference level, or more dB a division) and take covered, "
            + "reference and floor sweeps again.",
    };

    private static string Level(Evidence seen, double level) =>
        string.Create(Amount.Print, $"{level:0.0#} {seen.Campaign.Scale.Symbol()}");

    private static int Standing(SweepBlock block, int sweep)
    {
        double lowest = block.LowestDb;
        return block[sweep].ToArray().Count(level => BottomTies.IsAt(level, lowest));
    }
}
