using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The level moved while the sweeps were taken.</summary>
internal sealed class Drift : ICheck
{
    // IEEE Std 299-2006, 4.4: a reference that has shifted by more than 3 dB asks for the tests in between to be repeated.
    private const double RepeatDb = 3;

    private const int FewestForRanks = 4;

    /// <inheritdoc/>
    public string Code => "drift";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        seen.Drifts.Any() || Shift(seen) is not null ? null
            : "no sweeps repeat each other at enough frequencies clear of the floor";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        var trends = seen.Drifts.Where(d => d.IsClear).ToList();
        if (Shift(seen) is { } shift && Math.Abs(shift.Db) > RepeatDb)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Fault,
                Bias = new Bias(Math.Abs(shift.Db), Math.Abs(shift.Db)),
                Role = SweepRole.Reference,
                Size = new Decibels(Math.Abs(shift.Db)),
                Message = $"From the first to the last reference sweep the level moved by {Amount.Db(shift.Db)}: what was taken "
                    + "with it cannot be relied on.",
                Basis = string.Create(Amount.Print, $"{shift.First} against {shift.Last}; beyond ±{RepeatDb:0} dB the tests in "
                    + $"between are to be repeated (IEEE Std 299-2006, 4.4).{Trends(trends)}"),
                NextStep = "Let source and receiver warm up, fix cables and antennas, take the reference again until it stays, "
                    + "and then all specimens again.",
            };
            yield break;
        }

        foreach (DriftTest trend in trends)
        {
            yield return new Finding
            {
                Code = Code,
                Severity = Materiality.Weight(trend.Size, seen.Curves),
                Role = trend.IsOfTheClock ? null : trend.Groups[0].Role,
                Size = new Decibels(Math.Abs(trend.Size)),
                Message = $"The level {(trend.Size > 0 ? "rises" : "falls")} by {Amount.Db(Math.Abs(trend.Size))} "
                    + $"{Over(trend)}: the intervals allow for what may lie between reference and covered sweeps.",
                Basis = Slope(trend) + Ranks(trend),
                NextStep = "Let source and receiver warm up, take the reference before and after each specimen, and take the "
                    + "sweeps again; note the times (taken_at in sweeps.csv).",
            };
        }
    }

    /// <summary>Whether it tells of a reference that moved.</summary>
    internal static bool TellsOfReference(Evidence seen) => (Shift(seen) is { } shift && Math.Abs(shift.Db) > RepeatDb)
        || seen.Drifts.Any(d => d.IsClear && d.Groups.Any(g => g.Role == SweepRole.Reference));

    /// <summary>By their times, or as they come where one at least has none.</summary>
    internal static IEnumerable<T> InOrder<T>(IReadOnlyList<T> sweeps, Func<T, DateTimeOffset?> takenAt) =>
        sweeps.All(s => takenAt(s) is not null) ? sweeps.OrderBy(takenAt) : sweeps;

    // Reference sweeps have one group at most: they have no placements.
    private static (double Db, string First, string Last)? Shift(Evidence seen)
    {
        if (seen.Repeats.FirstOrDefault(g => g.Role == SweepRole.Reference) is not { } reference)
        {
            return null;
        }

        RepeatedSweep[] inOrder = [.. InOrder(reference.Sweeps, s => s.Sweep.TakenAt)];
        return (inOrder[^1].Offset.Value - inOrder[0].Offset.Value, inOrder[0].Sweep.Name, inOrder[^1].Sweep.Name);
    }

    private static string Over(DriftTest trend) => trend.Along switch
    {
        DriftAlong.Order => $"from the first {Role(trend)} sweep to the last",
        DriftAlong.OrderWarmUp => $"from the first {Role(trend)} sweep to the last, most of it at first",
        DriftAlong.Halves => $"from the first half of the {Role(trend)} sweeps to the second",
        DriftAlong.ClockWarmUp => "over the campaign, most of it in the first third",
        _ => string.Create(Amount.Print,
            $"over {(trend.Span < 2 ? trend.Span * 60 : trend.Span):0.#} {(trend.Span < 2 ? "minutes" : "hours")}"),
    };

    private static string Role(DriftTest trend) => trend.Groups[0].Role == SweepRole.Reference ? "reference" : "covered";

    private static string Slope(DriftTest trend)
    {
        Interval limits = trend.SlopeLimits(Confidence.NinetyFive);
        return string.Create(Amount.Print, $"Curve through the offsets of {trend.SweepCount} sweeps: {trend.Size:0.00} dB, 95 % "
            + $"limits {limits.Low * trend.Span:0.00} to {limits.High * trend.Span:0.00} dB; told from "
            + $"{DriftTest.WorthTellingDb} dB on where chance explains it in less than {DriftTest.FalseAlarm * 100:0} % of such "
            + $"tests.{(trend.LeftOut.IsEmpty ? string.Empty : " Odd sweeps were left out.")}");
    }

    private static string Ranks(DriftTest trend)
    {
        int reference = trend.Groups.ToList().FindIndex(g => g.Role == SweepRole.Reference);
        if (reference < 0)
        {
            return string.Empty;
        }

        // In the order in which they were taken, and without the odd ones, as the line has them.
        double[] inOrder = [.. trend.Groups[reference].Sweeps.Zip(trend.X[reference]).Where(s => !trend.LeftOut.Contains(s.First))
            .OrderBy(s => s.Second).Select(s => s.First.Offset.Value)];
        if (inOrder.Length < FewestForRanks)
        {
            return string.Empty;
        }

        var ranks = MannKendall.Of(inOrder);
        return string.Create(Amount.Print,
            $" Reference sweeps by rank alone (Mann and Kendall): S = {ranks.S}, probability {ranks.Probability:0.###}.");
    }

    private static string Trends(List<DriftTest> trends) => string.Concat(trends.Select(t => " " + Slope(t)));
}
