using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// A placement lies far from the others of its specimen: put in badly, swept without its specimen, or a file that is wrong.
/// </summary>
/// <remarks>
/// Which ones are, and why they are held against the placements of all specimens, says <see cref="StrayPlacements"/>.
/// </remarks>
internal sealed class PlacementOff : ICheck
{
    // A hundred times the power: no putting back does that, so something else was swept or written (judgement, no source).
    private const double AnotherThingDb = 20;

    // How near a level has to come to what it is taken for.
    private const double AlikeDb = 3;

    private const string Again = "put the specimen in again and sweep it anew";

    /// <inheritdoc/>
    public string Code => "stray-placement";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        seen.Campaign.Covered.Any(c => PlacementLevels.Of(c, seen.Floor) is not null) ? null
            : "no specimen has two placements that stand clear of the floor";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        // A sweep without its sign moves the placement that it is of.
        SpecimenName[] without = [.. LostSign.Single(seen).Where(s => s.Role == SweepRole.Covered).Select(SpecimenName.Of)];
        return StrayPlacements.Among(seen.Campaign, seen.Floor).Where(stray => !without.Contains(stray.Levels.Specimen))
            .Select(stray => Told(seen, stray));
    }

    private Finding Told(Evidence seen, StrayPlacement stray) => new()
    {
        Code = Code,
        Severity = Math.Abs(stray.AboveDb) >= AnotherThingDb ? Severity.Fault : Severity.Warning,
        Role = SweepRole.Covered,
        Specimen = stray.Levels.Specimen,
        Size = new Decibels(Math.Abs(stray.AboveDb)),
        Bias = Moved(stray),
        Misleads = true,
        Message = stray.IsSingledOut ? SingledOut(seen, stray) : Apart(stray),
        Basis = Basis(seen, stray),
        NextStep = stray.IsSingledOut ? NextStep(seen, stray)
            : Undecided(seen, stray),
    };

    private static string SingledOut(Evidence seen, StrayPlacement stray)
    {
        int others = stray.Others.Length;
        string verb = stray.Off.Length == 1 ? "reads" : "read";
        string distance = $"{Amount.Db(Math.Abs(stray.AboveDb))} {Side(stray.AboveDb)} the other {others}";
        string stays = stray.Off.Length == 1 ? "It stays" : "They stay";
        return $"{Placements(stray.Off.Length)} {stray.Named(stray.Off)} of {stray.Levels.Specimen} {verb} {distance}"
            + $"{Likeness(seen, stray)}. {stays} in the result.";
    }

    private static string Apart(StrayPlacement stray) =>
        $"Placements of {stray.Levels.Specimen} differ by {Amount.Db(stray.AboveDb)}: {stray.Named(stray.Off)} above, "
            + $"{stray.Named(stray.Others)} below. Neither can be singled out. All stay in the result.";

    private static string Likeness(Evidence seen, StrayPlacement stray) =>
        IsNegated(stray) ? ", with the levels of those less their sign"
        : IsReference(seen, stray) ? ", like the reference, as if swept without the specimen" : string.Empty;

    private static string NextStep(Evidence seen, StrayPlacement stray)
    {
        string named = $"{Placements(stray.Off.Length).ToLowerInvariant()} {stray.Named(stray.Off)}";
        return IsNegated(stray) ? $"Give the levels of {named} their minus sign again, as the display showed them, or {Again}."
            : IsReference(seen, stray) ? $"Look whether the specimen was in place at {named}; {Again}."
            : $"At {named} {Again}; if you know what was wrong, exclude the sweeps with that reason in sweeps.csv.";
    }

    private static string Undecided(Evidence seen, StrayPlacement stray)
    {
        int placements = seen.Campaign.Covered.First(c => c.Name == stray.Levels.Specimen).Block.Placements().Max() + 1;
        string third = placements > 2 ? string.Empty
            : ", and add a third placement: of two that differ neither can be singled out";
        return $"Look which of the placements is right, and {Again}{third}.";
    }

    private static string Basis(Evidence seen, StrayPlacement stray)
    {
        string levels = $"Levels as read over {Amount.OutOf(stray.Levels.Points.Length, seen.Campaign.Grid.Count)}, each "
            + "placement with the median "
            + $"of its sweeps: {Levels(stray, stray.Off)} against {Levels(stray, stray.Others)}.";
        return stray.Test is not { } test
            ? $"{levels} Told from {Amount.Db(StrayPlacements.TooFarDb)} on, whatever the spread: putting back moves a level by "
                + "a few tenths of a dB up to one."
            : levels + string.Create(
                Amount.Print,
                $" Against the placements of all specimens t = {test.T:0.0} on {test.DegreesOfFreedom} degrees of freedom, "
                    + $"probability {test.Probability:0.0e+0}; ")
            + string.Create(Amount.Print,
                $"told below {StrayPlacements.FalseAlarm:0.0##} and from {Amount.Db(StrayPlacements.WorthTellingDb)} on.");
    }

    private static string Levels(StrayPlacement stray, IEnumerable<int> places) =>
        string.Join(", ", places.Select(p => string.Create(Amount.Print, $"{stray.Levels.Names[p]} {stray.Levels.Db[p]:0.0}")));

    private static string Placements(int count) => count == 1 ? "Placement" : "Placements";

    private static string Side(double above) => above > 0 ? "above" : "below";

    // Without them the level of the specimen would be another by so much; of two, either may be the right one.
    private static Bias Moved(StrayPlacement stray)
    {
        double up = stray.MovedDb;
        return stray.IsSingledOut ? new Bias(Math.Max(0, -up), Math.Max(0, up)) : new Bias(stray.AboveDb / 2, stray.AboveDb / 2);
    }

    private static bool IsNegated(StrayPlacement stray) =>
        Math.Abs(stray.AboveDb) >= AnotherThingDb && Math.Abs(stray.OffDb + stray.OthersDb) < AlikeDb;

    private static bool IsReference(Evidence seen, StrayPlacement stray)
    {
        double reference = Sample.Mean(RowPart.At(seen.Campaign.Reference.Means().AsSpan(), stray.Levels.Points));
        return Math.Abs(stray.OffDb - reference) < AlikeDb && reference - stray.OthersDb >= StrayPlacements.TooFarDb;
    }
}
