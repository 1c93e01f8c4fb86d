using System.Diagnostics;
using System.Globalization;
using SweepStats.Planted.Faults;

namespace SweepStats.Planted.Trials;

/// <summary>A folder with the tests and one core beside them, where one fault after the other is tried.</summary>
internal sealed class Bench
{
    // A class that takes so many times its usual processor time, and so many seconds, will not end.
    private const double Patience = 10;
    private const double LeastSeconds = 30;
    private const double Unknown = 600;

    // A class that waits without working, on the clock.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(20);
    private static readonly TimeSpan Look = TimeSpan.FromMilliseconds(200);

    // Two gigabytes: a loop that fills the memory ends before the machine suffers.
    private const string MostMemory = "0x80000000";
    private readonly string folder;

    private Bench(string folder) => this.folder = folder;

    /// <summary>Lays out a folder: a copy of this program and of the tests.</summary>
    public static Bench Set(int number)
    {
        string folder = Path.Combine(Repository.Bin, "benches", number.ToString(CultureInfo.InvariantCulture));
        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        Directory.CreateDirectory(folder);
        foreach (string file in Directory.EnumerateFiles(AppContext.BaseDirectory))
        {
            File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
        }

        return new Bench(folder);
    }

    /// <summary>Runs the tests beside a core.</summary>
    /// <param name="core">The core's source.</param>
    /// <param name="fault">What to plant; nothing for the core as it stands.</param>
    /// <param name="plan">Classes and tests in the order in which they run.</param>
    /// <param name="usual">Processor time that a class takes, in seconds.</param>
    public Outcome Try(CoreSource core, Fault? fault, IEnumerable<string> plan, IReadOnlyDictionary<string, double> usual)
    {
        core.Emit(fault, folder);
        string planFile = Path.Combine(folder, "plan.txt");
        File.WriteAllLines(planFile, plan);
        using Process run = Process.Start(Command(planFile))!;
        var watch = new RunWatch(run);
        while (!run.WaitForExit(Look))
        {
            double most = Math.Max(LeastSeconds, Patience * usual.GetValueOrDefault(watch.Class, Unknown));
            if (watch.Worked() > most || watch.Waited() > Longest)
            {
                run.Kill(entireProcessTree: true);
                return new Outcome(watch.Class + " did not end", 0, watch.Seconds);
            }
        }

        run.WaitForExit();
        return watch.Result();
    }

    private ProcessStartInfo Command(string planFile)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Path.Combine(folder, "SweepStats.Planted.dll"));
        start.ArgumentList.Add("tests");
        start.ArgumentList.Add(planFile);
        start.Environment["DOTNET_GCHeapHardLimit"] = MostMemory;
        return start;
    }
}
