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


    public static string Of(Draw draw, Equivalents equivalents, ulong seed, int tests, Trial[] trials)
    {
        int own = trials.Count(IsCaughtAtHome);
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"""
            # Planted faults

            How many faults of the core the unit tests catch. {trials.Length} faults are planted in src/SweepStats, one at a time, and tests/SweepStats.Tests runs beside each: {Caught(trials)} are caught, {own} of them by a test of the fault's own room.

            A fault is another operator, a relation turned round or moved onto or off its limit, a whole constant moved by one, a real one a tenth larger, yes for no, the smaller for the larger (and such pairs of calls), an argument in place of the result, a condition turned round, a statement or an early way out removed. Seed {seed} draws them among {draw.Places} places, evenly over the rooms (the folders of the core, and the flow above them). Left out are text for people, checks of arguments that only throw, and constants that other projects have taken into their code. {Count(draw.NotCompiled)} no program, and the next one of the room was drawn instead. So it was for the {draw.Equal.Count} that cannot change a result; they stand at the end with the reason.

            The tests of the room run first, then the others, up to the first that fails; {tests} pass where no fault is planted. Those that read the source (house rules, sentences) are left out. A class that works for ten times its usual time, and half a minute, does not end: that fault is caught too.

            Run it again with `tests/SweepStats.Planted/planted.sh` (the seed, the number of faults and another page may follow). What caught a fault the last time, by the table below, is tried first.

            | fault | place | right → faulty | caught by |
            |---|---|---|---|

            """);
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

    private static bool IsCaughtAtHome(Trial trial) =>
        trial.Outcome.Caught?.StartsWith(TrialSeries.Mirror(trial.Fault), StringComparison.Ordinal) == true;

    private static string Count(int broken) => broken == 1 ? "One made" : $"{broken} made";

    private static string Row(Fault fault) =>
        $"{fault.File}:{fault.Line} | `{Escaped(fault.Right)}` → `{Escaped(fault.Faulty)}`";

    private static string Who(Trial trial) => trial.Outcome.Caught?.Replace(Tests, "", StringComparison.Ordinal) ?? Survived;

    private static string Escaped(string code) => code.Replace("|", "\\|", StringComparison.Ordinal);
}
