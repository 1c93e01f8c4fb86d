using SweepStats.Leakage;

namespace SweepStats.Checks;

/// <summary>
/// Plate sweeps that stand over the reference: a solid plate passes no more than nothing in its place, so the two look exchanged.
/// </summary>
internal static class ExchangedPlate
{
    /// <summary>What to do about it, in every finding that it would mislead.</summary>
    public const string NextStep =
        "Look whether plate and reference sweeps were exchanged: they look so. Give each its own role.";

    // Twice the power over most of the band, as for more power with the specimen than without it (judgement, no source).
    private const double ImpossibleDb = 3;

    /// <summary>Whether they look exchanged.</summary>
    public static bool IsLikely(Evidence seen) => !seen.Curves.IsEmpty && !SourceLevelChange.IsPlateElsewhere(seen)
        && 2 * OverDb(seen).Count(over => over > ImpossibleDb) > seen.Campaign.Grid.Count;

    /// <summary>How far the plate stands over the reference in dB, at each frequency where it shows over the noise.</summary>
    public static double[] OverDb(Evidence seen) =>
        seen.Leakages.FirstOrDefault(l => l.Source == LeakageSource.Plate) is not { } plate ? []
        : [.. plate.LevelDb.Select((level, f) => level - seen.Curves[0].Readings[f].Evidence.ReferenceDb).Where(double.IsFinite)];
}
