using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Sweeps that repeat each other lie on two levels: for some of them the source was off, or a cable loose.</summary>
/// <remarks>Where all on one level are odd, or read like another kind, their own checks have told it.</remarks>
internal sealed class TwoLevels : ICheck
{
    // As near as levels of noise alone lie to the floor, with the antenna on.
    private const double OfFloorDb = 1;

    private const int MostNamed = 3;

    public string Code => "two-levels";

    public string? UntestedBecause(Evidence seen) =>
        RepeatSplits.CanTell(seen.Campaign) ? null : "no three sweeps of the reference or of one placement repeat each other";

    public string? LeftBecause(Evidence seen)
    {
        int few = RepeatSplits.CanTell(seen.Campaign) ? RepeatSplits.Untold(seen.Campaign) : 0;
        return few == 0 ? null
            : $"no three sweeps of one placement repeat each other at {Amount.Count(few, "specimen", "specimens")}";
    }

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        HashSet<Sweep> told = [.. seen.OddRepeats.Select(o => o.Sweep.Sweep),
            .. MistakenSweeps.Among(seen.Campaign).Select(m => m.Sweep)];
        return RepeatSplits.Among(seen.Campaign, seen.Floor)
            .Where(s => !s.Lower.All(told.Contains) && !s.Higher.All(told.Contains) && !IsDrift(seen, s))
            .GroupBy(s => s.Specimen).Select(g => Told(seen, [.. g]));
    }

    // A reference that is another from some sweep on, where that was told.
    private static bool IsDrift(Evidence seen, SplitRepeats split)
    {
        if (split.Specimen is not null || !Drift.TellsOfReference(seen))
        {
            return false;
        }

        bool[] lower = [.. Drift.InOrder(seen.Campaign.Reference.Sweeps, s => s.TakenAt).Select(split.Lower.Contains)];
        return lower.Zip(lower.Skip(1)).Count(pair => pair.First != pair.Second) == 1;
    }

    private Finding Told(Evidence seen, SplitRepeats[] splits)
    {
        Sweep[] lower = [.. splits.SelectMany(s => s.Lower).OrderBy(s => s.Name, NaturalOrder.Instance)];
        int all = lower.Length + splits.Sum(s => s.Higher.Length);
        double apart = splits.Max(s => s.ApartDb);
        string floor = InFloor(seen, splits) ? ", in the floor" : string.Empty;
        return new()
        {
            Code = Code,
            Severity = Severity.Warning,
            Role = lower[0].Role,
            Specimen = splits[0].Specimen,
            Size = new Decibels(apart),
            Bias = new Bias(apart, apart),
            Misleads = true,
            Message = $"{Whose(splits)} lie on two levels, {Amount.Db(apart)} apart: {lower.Length} of {all} lie lower{floor}.",
            Basis = $"{Levels(splits)} Told where the gap between two levels of sweeps that repeat each other is "
                + $"{Amount.Db(splits.Max(s => s.ToldFromDb))} or more, and "
                + $"{RepeatSplits.GapOverRange:0} times as wide as either.",
            NextStep = $"Look what was different at {Amount.Names([.. lower.Select(s => s.Name)], MostNamed)}, or at the others: "
                + "the source off, a cable loose, another attenuator, a gap at the edge. Exclude the sweeps that were wrong with "
                + "that reason in sweeps.csv, and take them again.",
        };
    }

    private static string Whose(SplitRepeats[] splits) => splits[0].Specimen is not { } name ? "Reference sweeps"
        : splits.Length == 1 ? $"Sweeps of {name} that repeat each other"
        : $"Sweeps of {name} that repeat each other, in {splits.Length} placements,";

    private static string Levels(SplitRepeats[] splits)
    {
        SplitRepeats widest = splits.MaxBy(s => s.ApartDb)!;
        return string.Create(Amount.Print, $"Means over frequency, {widest.Lower.Length} at {widest.LowerDb:0.0} and "
            + $"{widest.Higher.Length} at {widest.HigherDb:0.0} on the level scale.");
    }

    private static bool InFloor(Evidence seen, SplitRepeats[] splits) => seen.Floor?.LevelDb.Average() is { } floor
        && Array.TrueForAll(splits, s => Math.Abs(s.LowerDb - floor) < OfFloorDb);
}
