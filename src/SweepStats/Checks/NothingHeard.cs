using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Checks;

/// <summary>
/// A specimen that lies in the floor all over, where others of its lot let far more through: it shields far better, or nothing
/// was sent.
/// </summary>
/// <remarks>
/// Sweeps with the source off, or a cable loose, read as the best cloth of all, and their bounds lie above the truth. Its own
/// sweeps cannot tell, so the others of its lot, which are of one cloth, decide whether it is asked.
/// </remarks>
internal sealed class NothingHeard : ICheck
{
    // As for a specimen that reads like nothing in its place.
    private const double NearlyAll = 0.9;

    // A hundred times the power: pieces of one cloth do not differ by it (judgement, no source).
    private const double AnotherThingDb = 20;

    public string Code => "nothing-heard";

    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen)
        ?? (seen.Curves.GroupBy(c => c.Name.Lot).Any(lot => lot.Skip(1).Any()) ? null : "it takes two specimens of one lot");

    public IEnumerable<Finding> Inspect(Evidence seen) =>
        seen.Curves.GroupBy(c => c.Name.Lot).SelectMany(lot => InLot([.. lot]));

    private IEnumerable<Finding> InLot(ShieldingCurve[] lot)
    {
        ShieldingCurve[] heard = [.. lot.Where(c => !IsSilent(c) && double.IsFinite(MiddleDb(c)))];
        if (heard.Length == 0)
        {
            yield break;
        }

        double best = heard.Max(MiddleDb);
        foreach (ShieldingCurve silent in lot.Where(c => IsSilent(c) && MiddleDb(c) - best >= AnotherThingDb))
        {
            yield return Asked(silent, heard.Length, best);
        }
    }

    private Finding Asked(ShieldingCurve silent, int heard, double bestDb) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = Sweeps.SweepRole.Covered,
        Specimen = silent.Name,
        Size = new Decibels(MiddleDb(silent) - bestDb),
        Bias = Bias.Unknown,
        Misleads = true,
        Message = $"Nothing is heard behind {silent.Name}: it lies in the floor at "
            + $"{Amount.OutOf(Hidden(silent), silent.Readings.Length)}, where "
            + $"{(heard == 1 ? "the other" : "the best of the others")} "
            + $"of its lot shields {Amount.Db(bestDb)}. So it reads too with the source off or a cable loose.",
        Basis = $"Its bounds, {Amount.Db(MiddleDb(silent))} in the middle, lie {Amount.Db(MiddleDb(silent) - bestDb)} "
            + "above that; "
            + $"told from {Amount.Db(AnotherThingDb)} on, where {NearlyAll * 100:0} % of the frequencies lie in the floor.",
        NextStep = $"Look whether the source was on and every cable tight while {silent.Name} was swept, and sweep it again.",
    };

    private static bool IsSilent(ShieldingCurve curve) => Hidden(curve) >= NearlyAll * curve.Readings.Length;

    private static int Hidden(ShieldingCurve curve) => curve.Readings.Count(r => r.Evidence.HiddenByFloor);

    private static double MiddleDb(ShieldingCurve curve) =>
        curve.Readings.Select(r => r.ValueOrBound.Value).Where(double.IsFinite).ToArray() is { Length: > 0 } known
            ? Sample.Median(known) : double.NaN;
}
