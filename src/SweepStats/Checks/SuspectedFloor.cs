using SweepStats.Alignment;
using SweepStats.Doubts;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// Covered sweeps that no longer look like each other, far above what is taken for the floor, have probably reached the
/// receiver's noise.
/// </summary>
internal sealed class SuspectedFloor : ICheck
{
    /// <inheritdoc/>
    public string Code => "suspected-floor";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        seen.Campaign.Grid.Count < SharedShape.FewestPoints
            ? $"sweeps of fewer than {SharedShape.FewestPoints} frequencies have no shape to tell by"
        : !seen.Campaign.Covered.Any(LostShape.CanTell) ? "it takes two covered sweeps of a specimen" : null;

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        for (int i = 0; i < seen.Campaign.Covered.Length; i++)
        {
            ImmutableArray<int> here = seen.Doubts.Specimens[i].LostShape;
            if (here.Length > 0)
            {
                yield return Told(seen, seen.Campaign.Covered[i], here);
            }
        }
    }

    private Finding Told(Evidence seen, SpecimenBlock specimen, ImmutableArray<int> here)
    {
        SweepBlock block = specimen.Block;
        double level = here.Average(f => Enumerable.Range(0, block.SweepCount).Average(j => block[j][f]));
        return new Finding
        {
            Code = Code,
            Severity = Severity.Warning,
            Role = SweepRole.Covered,
            Specimen = specimen.Name,
            Where = Stretches.Where(seen.Campaign.Grid, here.Contains),
            Message = string.Create(Amount.Print, $"At {Amount.OutOf(here.Length, block.PointCount)} the covered sweeps do not "
                + $"show the reference's shape, nor resemble each other: what they show there, about {level:0} on the level "
                + $"scale, is probably the receiver's own "
                + $"noise{(seen.Floor is null ? string.Empty : ", far above what is taken for the floor")}. The shielding there "
                + $"is a lower bound."),
            Basis = string.Create(Amount.Print, $"Correlation of {block.SweepCount} covered sweeps with each other over "
                + $"{(2 * SharedShape.HalfWidth(block.PointCount)) + 1} neighbouring frequencies, straight line taken out: its "
                + $"99 % upper limit is below half of what the reference's shape would give there."),
            NextStep = UnreadFiles.Of(seen.Campaign.Unread, SweepRole.Floor)?.Mend
                ?? "Take floor sweeps: source off, all receiver settings as they are, three at least. Where they come out at "
                    + "this level, the shielding is at least what is shown, not equal to it.",
        };
    }
}
