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

    /// <summary>Runs the tests beside the core as it stands.</summary>
    /// <exception cref="InvalidOperationException">A test fails, or none ran.</exception>
    public int WithoutFault()
    {
        Outcome outcome = benches[0].Try(core, null, [], new Dictionary<string, double>());
        usual = outcome.Seconds;
        UsualTimes.Keep(usual);
        return outcome.Caught is null
            ? outcome.Passed
            : throw new InvalidOperationException("Without a fault the tests fail: " + outcome.Caught);
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
                trials[i] = new Trial(faults[i], bench.Try(core, faults[i], Plan(faults[i]), usual));
                earlier.Keep(trials[i]);
                Tell(trials[i], $"{Interlocked.Increment(ref done)}/{faults.Count}");
            }
        }))]);
        return trials;
    }

    private static void Tell(Trial trial, string count) => Console.WriteLine($"{count} {trial.Fault.File}:{trial.Fault.Line} "
        + $"{trial.Fault.Right} → {trial.Fault.Faulty}: {trial.Outcome.Caught ?? "SURVIVED"}");

    // What caught it before, then the tests of the room, then the others; quick ones first.
    private IEnumerable<string> Plan(Fault fault)
    {
        string mirror = Mirror(fault);
        IEnumerable<string> classes = usual.Keys.Where(c => usual[c] <= MostSeconds).OrderBy(c => !c.StartsWith(mirror, StringComparison.Ordinal))
            .ThenBy(c => usual[c]);
        return earlier.Of(fault) is { } test ? classes.Prepend(test) : classes;
    }
}
