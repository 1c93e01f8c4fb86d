using System.Diagnostics;
using SweepStats.Files.Traces;

namespace SweepStats.Studies.Fuzzing;

/// <summary>Reads big files, each in a process of its own, and tells time and memory beside the file's size.</summary>
internal static class BigRun
{
    private const int MostSeconds = 120;

    /// <summary>Runs the files whose names hold a word; all for an empty one.</summary>
    /// <returns>0 where all were read or refused in order, else 1.</returns>
    public static int Start(string word)
    {
        string folder = Directory.CreateTempSubdirectory("big-traces").FullName;
        bool failed = false;
        Console.WriteLine("file                              size MB     wall s    peak MB  grown/size  outcome");
        foreach (BigFile file in BigFiles.All.Where(f => f.Name.Contains(word, StringComparison.Ordinal)))
        {
            string path = Path.Combine(folder, file.Name);
            using (FileStream stream = File.Create(path))
            {
                file.Write(stream);
            }

            double size = new FileInfo(path).Length / 1e6;
            string told = InChild(path);
            failed |= told.StartsWith("FAILED", StringComparison.Ordinal);
            Console.WriteLine(FormattableString.Invariant($"{file.Name,-30} {size,10:F1} ") + told);
            File.Delete(path);
        }

        Directory.Delete(folder);
        return failed ? 1 : 0;
    }

    /// <summary>Reads one file and prints time, peak memory and outcome; for the child.</summary>
    public static int One(string path)
    {
        TraceFile.Look("Frequency (Hz),Level (dBm)\n1,2\n2,3\n"u8, "warm.csv", new TraceReadOptions());
        double before = PeakMegabytes();
        long start = Stopwatch.GetTimestamp();
        TraceReading reading = TraceFile.Read(path, Path.GetFileName(path),
            new TraceReadOptions { FrequencyUnit = FrequencyUnit.Hertz, LevelUnit = LevelUnit.DecibelMilliwatts });
        double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
        double peak = PeakMegabytes();
        string outcome = reading.Faults.IsEmpty
            ? FormattableString.Invariant($"{reading.Traces.Length} traces of {reading.Traces[0].Levels.Length} points")
            : FormattableString.Invariant($"{reading.Faults.Length} faults, first: ") + Shortened(reading.Faults[0].ToString());
        Console.WriteLine(FormattableString.Invariant(
            $"{seconds,10:F2} {peak,10:F0} {(peak - before) * 1e6 / new FileInfo(path).Length,11:F1}  {outcome}"));
        return 0;
    }

    private static string InChild(string path)
    {
        string program = Environment.ProcessPath!;
        bool host = Path.GetFileNameWithoutExtension(program) == "dotnet";
        var start = new ProcessStartInfo(program,
            host ? [typeof(BigRun).Assembly.Location, "fuzz-big-one", path] : ["fuzz-big-one", path])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process child = Process.Start(start)!;
        Task<string> output = child.StandardOutput.ReadToEndAsync();
        Task<string> errors = child.StandardError.ReadToEndAsync();
        if (!child.WaitForExit(TimeSpan.FromSeconds(MostSeconds)))
        {
            child.Kill();
            return FormattableString.Invariant($"FAILED: not done after {MostSeconds} s");
        }

        return child.ExitCode == 0 ? output.Result.TrimEnd()
            : FormattableString.Invariant($"FAILED: exit {child.ExitCode}, {Shortened(errors.Result.ReplaceLineEndings(" "))}");
    }

    private static string Shortened(string text) => text.Length <= 200 ? text : text[..200] + "…";

    // The high-water mark of resident memory, which only Linux tells this way.
    private static double PeakMegabytes() =>
        double.Parse(File.ReadLines("/proc/self/status").First(l => l.StartsWith("VmHWM", StringComparison.Ordinal))
            .Split(' ', '\t')[^2], System.Globalization.CultureInfo.InvariantCulture) * 1024 / 1e6;
}
