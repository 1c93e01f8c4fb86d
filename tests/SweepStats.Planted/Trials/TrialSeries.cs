using SweepStats.Planted.Faults;

namespace SweepStats.Planted.Trials;

/// <summary>Tries faults on two benches side by side.</summary>
/// <param name="core">The core.</param>
/// <param name="earlier">Which tests caught them before.</param>
internal sealed class TrialSeries(CoreSource core, EarlierTrials earlier)
{
    private const int Benches = 2;

    // Rooms whose tests stand in a folder of another name.
    private static readonly Dictionary<string, string> Mirrors = new() { ["Leakage"] = "Leaking" };
    private readonly Bench[] benches = [.. Enumerable.Range(1, Benches).Select(Bench.Set)];
    private IReadOnlyDictionary<string, double> usual = UsualTimes.Kept();

    /// <summary>Classes that usually take more seconds of the processor are left out.</summary>
    public double MostSeconds { get; init; } = double.PositiveInfinity;

    /// <summary>Beginning of the names of the tests of a fault's own room.</summary>
    public static string Mirror(Fault fault) => $"{StudyPage.Tests}{Mirrors.GetValueOrDefault(fault.Room, fault.Room)}.";

    /// <summary>
    /// Runs the tests beside the core as it stands, half of the classes on each bench; what passed before is not run again.
    /// </summary>
    /// <returns>How many passed.</returns>
    /// <exception cref="InvalidOperationException">A test fails, or none ran.</exception>
    public int WithoutFault()
    {
        string version = core.Version + TestRun.Version();
        if (UsualTimes.Passed(version) is { } before)
        {
            return before;
        }

        string[] classes = [.. TestRun.Classes().OrderByDescending(c => usual.GetValueOrDefault(c))];
        var outcomes = new Outcome[Benches];
        var none = new Dictionary<string, double>();
        Task.WaitAll([.. benches.Select((bench, b) => Task.Run(() =>
            outcomes[b] = bench.Try(core, null, classes.Where((_, i) => i % Benches == b), none)))]);
        if (outcomes.FirstOrDefault(o => o.Caught is not null) is { } failed)
        {
            throw new InvalidOperationException("Without a fault the tests fail: " + failed.Caught);
        }

        usual = outcomes.SelectMany(o => o.Seconds).ToDictionary();
        int passed = outcomes.Sum(o => o.Passed);
        UsualTimes.Keep(usual, version, passed);
        return passed;
    }

    /// <summary>Tries each fault.</summary>
    public Trial[] Of(IReadOnlyList<Fault> faults)
    {
        var trials = new Trial[faults.Count];
        int next = -1, done = 0;
        Task.WaitAll([.. benches.Select(bench => Task.Run(() =>
        {
            for (int i = Interlocked.Increment(ref next); i < faults.Count; i = Interlocked.Increment(ref next))
            {
                trials[i] = new Trial(faults[i], Outcome(bench, faults[i]));
                earlier.Keep(trials[i]);
                Tell(trials[i], $"{Interlocked.Increment(ref done)}/{faults.Count}");
            }
        }))]);
        return trials;
    }

    private Outcome Outcome(Bench bench, Fault fault) => earlier.Settled(fault) is { } test
        ? new Outcome(test, 0, new Dictionary<string, double>())
        : bench.Try(core, fault, Plan(fault), usual);

    private static void Tell(Trial trial, string count) => Console.WriteLine(
        $"{count} {trial.Fault.File}:{trial.Fault.Line} {trial.Fault.Right} → {trial.Fault.Faulty}: "
            + (trial.Outcome.Caught ?? "SURVIVED"));

    // What caught it before, then the tests of the room, then the others; quick ones first.
    private IEnumerable<string> Plan(Fault fault)
    {
        string mirror = Mirror(fault);
        IEnumerable<string> classes = usual.Keys.Where(c => usual[c] <= MostSeconds)
            .OrderBy(c => !c.StartsWith(mirror, StringComparison.Ordinal)).ThenBy(c => usual[c]);
        return earlier.Of(fault) is { } test ? classes.Prepend(test) : classes;
    }
}
