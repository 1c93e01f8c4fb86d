using System.Diagnostics;

namespace SweepStats.Studies.Fuzzing;

/// <summary>Reads every so-manieth file of a run on its own thread.</summary>
internal sealed class FuzzWorker
{
    private readonly Thread _thread;
    private long _file = -1;
    private long _started;

    public FuzzWorker(FuzzPlan plan, int first, int step, FoundFiles found)
    {
        _thread = new Thread(() => Work(plan, first, step, found)) { IsBackground = true, Name = $"fuzz {first}" };
        _thread.Start();
    }

    public FuzzTally Tally { get; } = new();

    /// <summary>The file that is being read, and for how long; null where the thread is done.</summary>
    public (long File, TimeSpan Since)? Now =>
        _thread.IsAlive ? (Volatile.Read(ref _file), Stopwatch.GetElapsedTime(Volatile.Read(ref _started))) : null;

    private void Work(FuzzPlan plan, int first, int step, FoundFiles found)
    {
        string scratch = Path.GetTempFileName();
        var reader = new FuzzReading(scratch);
        Volatile.Write(ref _started, Stopwatch.GetTimestamp());
        plan.WarmUp(reader);
        for (long file = first; file < plan.Files; file += step)
        {
            Volatile.Write(ref _started, Stopwatch.GetTimestamp());
            Volatile.Write(ref _file, file);
            FuzzCase made = plan.Case(file);
            FuzzOutcome outcome = reader.Judge(made);
            Tally.Add(made, outcome);
            if (outcome.Failure is not null)
            {
                found.Take(made, outcome, reader);
            }
        }

        File.Delete(scratch);
    }
}
