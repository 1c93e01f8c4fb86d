using System.Diagnostics;

namespace SweepStats.Studies.Fuzzing;

/// <summary>Reads mutated trace files on two threads and tells what failed.</summary>
internal static class FuzzRun
{
    private const int Threads = 2;
    private const int MinutesForEver = 1;
    private const double KeptMilliseconds = 50;
    private const double KeptRatio = 100;

    /// <summary>Runs a plan; files that fail go to a folder.</summary>
    /// <returns>0 where nothing failed, else 1.</returns>
    public static int Start(FuzzPlan plan, string foundFolder)
    {
        long start = Stopwatch.GetTimestamp();
        var found = new FoundFiles(foundFolder);
        FuzzWorker[] workers = [.. Enumerable.Range(0, Threads).Select(i => new FuzzWorker(plan, i, Threads, found))];
        if (!Watched(workers, plan, found))
        {
            Console.WriteLine("stopped: a file is read for ever");
            return 1;
        }

        var all = new FuzzTally();
        Array.ForEach(workers, w => all.Add(w.Tally));
        Alone(plan, all, found);
        foreach ((string kind, int times) in found.Kinds.OrderByDescending(k => k.Value))
        {
            Console.WriteLine($"{times,8} times: {kind}");
        }

        Console.WriteLine(Summary(all, plan, Stopwatch.GetElapsedTime(start)));
        return found.Kinds.Count == 0 ? 0 : 1;
    }

    // A thread cannot be stopped from outside: where one hangs for good the file is kept and the run ends.
    private static bool Watched(FuzzWorker[] workers, FuzzPlan plan, FoundFiles found)
    {
        int seconds = 0;
        while (workers.Any(w => w.Now is not null))
        {
            Thread.Sleep(500);
            foreach (FuzzWorker worker in workers)
            {
                if (worker.Now is { } now && now.Since > TimeSpan.FromMinutes(MinutesForEver) && now.File >= 0)
                {
                    found.Keep(plan.Case(now.File), "is read for ever", "hang");
                    return false;
                }
            }

            if (++seconds % 60 == 0)
            {
                Console.Error.WriteLine(FormattableString.Invariant($"{workers.Sum(w => w.Tally.Files)} files"));
            }
        }

        return true;
    }

    // The slowest and the greediest once more with nothing beside them, three times: the least is what the file costs.
    private static void Alone(FuzzPlan plan, FuzzTally all, FoundFiles found)
    {
        string scratch = Path.GetTempFileName();
        var reader = new FuzzReading(scratch);
        foreach ((double milliseconds, long number) in all.Slowest)
        {
            FuzzCase file = plan.Case(number);
            double again = Enumerable.Range(0, 3).Min(_ => reader.Judge(file).Milliseconds);
            Tell(file, "slow",
                FormattableString.Invariant($"{file.Content.Length} bytes, {milliseconds:F1} ms, alone {again:F2} ms"),
                again >= KeptMilliseconds, found);
        }

        foreach ((double ratio, long number) in all.Greediest)
        {
            FuzzCase file = plan.Case(number);
            double again = Enumerable.Range(0, 3).Min(_ => reader.Judge(file).Allocated) / (double)file.Content.Length;
            Tell(file, "greedy",
                FormattableString.Invariant($"{file.Content.Length} bytes, {ratio:F1} bytes a byte, alone {again:F1}"),
                again >= KeptRatio, found);
        }

        File.Delete(scratch);
    }

    private static void Tell(FuzzCase file, string kind, string told, bool kept, FoundFiles found)
    {
        if (kept)
        {
            found.Keep(file, told, kind);
        }
        else
        {
            Console.WriteLine(FormattableString.Invariant($"{kind}: file {file.File}, {told}"));
        }
    }

    private static string Summary(FuzzTally all, FuzzPlan plan, TimeSpan time) => FormattableString.Invariant(
        $"summary: {all.Files} files ({all.Bytes >> 20} MiB) from {plan.Seeds} seeds in {time.TotalSeconds:F0} s; ")
        + FormattableString.Invariant($"exceptions {all.Of(FuzzFailure.Exception)}, hangs {all.Of(FuzzFailure.Hang)}, memory ")
        + FormattableString.Invariant($"excesses {all.Of(FuzzFailure.Memory)}, invalid results {all.Of(FuzzFailure.Invalid)}; ")
        + FormattableString.Invariant($"slowest {(all.Slowest.Count > 0 ? all.Slowest[0].Milliseconds : 0):F1} ms, largest ")
        + FormattableString.Invariant(
            $"memory ratio {(all.Greediest.Count > 0 ? all.Greediest[0].Ratio : 0):F1} (of files of 1 KiB or more), ")
        + FormattableString.Invariant(
            $"largest share of the allowance {all.LargestShare:P0}; read {all.Read}, refused {all.Refused}");
}
