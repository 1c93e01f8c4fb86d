using System.Globalization;
using System.Text;
using SweepStats.Planted.Faults;
using SweepStats.Planted.Trials;

namespace SweepStats.Planted;

/// <summary>The page: what was done, how to do it again, figures, and a table of all faults.</summary>
internal static class StudyPage
{
    private const string Survived = "SURVIVED";

    /// <summary>Beginning of the names of all tests.</summary>
    public const string Tests = "SweepStats.Tests.";

    private const string Kinds =
        "A fault is another operator, a relation turned round or moved onto or off its limit, a whole constant moved "
        + "by one, a real one a tenth larger, yes for no, the smaller for the larger (and such pairs of calls), an "
        + "argument in place of the result, a condition turned round, a statement or an early way out removed. Left "
        + "out are text for people, checks of arguments that only throw, and constants that other projects have taken "
        + "into their code.";

    private const string Again =
        "Run it again with `tests/SweepStats.Planted/planted.sh`; another seed, number and page may follow. The test "
        + "that caught a fault the last time runs first, then those of its room, then all others, up to the first that "
        + "fails; what ran here beside the same core is not run again. A class that works for ten times its usual "
        + "time, and half a minute, does not end: that is caught too. Tests were written for what a first run of seed "
        + "1 left uncaught, so another seed tells more of faults that nobody has seen.";

    public static string Of(Draw draw, Equivalents equivalents, ulong seed, int tests, Trial[] trials)
    {
        int own = trials.Count(IsCaughtAtHome);
        var page = new StringBuilder("# Planted faults\n\n");
        page.AppendJoin("\n\n", Figures(trials, own, tests), Kinds, Drawn(draw, seed), Again);
        page.Append("\n\n");
        page.Append("| fault | place | right → faulty | caught by |\n|---|---|---|---|\n");
        foreach ((int number, Trial trial) in trials.Index())
        {
            page.Append(CultureInfo.InvariantCulture, $"| {number + 1} | {Row(trial.Fault)} | {Who(trial)} |\n");
        }

        page.Append("\nDrawn, but they cannot change a result:\n\n| place | right → faulty | why |\n|---|---|---|\n");
        foreach (Fault fault in draw.Equal)
        {
            page.Append(CultureInfo.InvariantCulture, $"| {Row(fault)} | {equivalents.Why(fault)} |\n");
        }

        return page.Append(CultureInfo.InvariantCulture, $"\n{LastLine(trials)}\n").ToString();
    }

    /// <summary>The line that closes the page.</summary>
    public static string LastLine(Trial[] trials) => $"{Caught(trials)} of {trials.Length} caught";

    private static int Caught(Trial[] trials) => trials.Count(t => t.Outcome.Caught is not null);

    private static string Figures(Trial[] trials, int own, int tests) =>
        $"How many faults of the core the unit tests catch. {trials.Length} faults are planted in src/SweepStats, one "
        + $"at a time, and tests/SweepStats.Tests runs beside each: {Caught(trials)} are caught, {own} of them by a "
        + $"test of the fault's own room. {tests} tests pass where no fault is planted; those that read the source and "
        + "not the assembly (house rules, sentences) are left out.";

    private static string Drawn(Draw draw, ulong seed) =>
        $"Seed {seed} draws them among {draw.Places} places, as many in each room (the folders of the core, and the "
        + $"flow above them). {Count(draw.NotCompiled)} no program, and the next one of the room was drawn instead. So "
        + $"it was for the {draw.Equal.Count} drawn that cannot change a result: they are no part of the hundred, and "
        + "stand at the end with the reason.";

    private static bool IsCaughtAtHome(Trial trial) =>
        trial.Outcome.Caught?.StartsWith(TrialSeries.Mirror(trial.Fault), StringComparison.Ordinal) == true;

    private static string Count(int broken) => broken == 1 ? "One made" : $"{broken} made";

    private static string Row(Fault fault) =>
        $"{fault.File}:{fault.Line} | `{Escaped(fault.Right)}` → `{Escaped(fault.Faulty)}`";

    private static string Who(Trial trial) => trial.Outcome.Caught?.Replace(Tests, "", StringComparison.Ordinal) ?? Survived;

    private static string Escaped(string code) => code.Replace("|", "\\|", StringComparison.Ordinal);
}
