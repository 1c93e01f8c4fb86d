using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace SweepStats.Planted.Trials;

/// <summary>Follows a run of the tests by what it prints.</summary>
internal sealed class RunWatch
{
    private readonly Process run;
    private readonly Dictionary<string, double> seconds = [];
    private readonly Lock changing = new();
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private string at = "";
    private double since;
    private string? failed;
    private int passed;

    public RunWatch(Process run)
    {
        this.run = run;
        run.OutputDataReceived += (_, line) => Hear(line.Data ?? "");
        run.ErrorDataReceived += (_, _) => { };
        run.BeginOutputReadLine();
        run.BeginErrorReadLine();
    }

    /// <summary>Class, or test, that runs.</summary>
    public string Class => at;

    /// <summary>Processor time by class.</summary>
    public IReadOnlyDictionary<string, double> Seconds => seconds;

    /// <summary>Seconds of the processor since it began.</summary>
    public double Worked() => Processor() - since;

    /// <summary>Time since it began.</summary>
    public TimeSpan Waited() => clock.Elapsed;

    /// <summary>What came of it, once it has ended.</summary>
    public Outcome Result() => new(failed ?? (run.ExitCode == 0 && passed > 0 ? null : Broken()), passed, seconds);

    private string Broken() => $"the run broke off in {(at.Length > 0 ? at : "no test")}";

    private void Hear(string line)
    {
        if (line.StartsWith(TestRun.Begins, StringComparison.Ordinal))
        {
            Begin(line[TestRun.Begins.Length..]);
        }
        else if (line.StartsWith(TestRun.Failed, StringComparison.Ordinal))
        {
            failed = line[TestRun.Failed.Length..];
        }
        else if (line.StartsWith(TestRun.Passed, StringComparison.Ordinal))
        {
            passed = int.Parse(line[TestRun.Passed.Length..], CultureInfo.InvariantCulture);
            Begin("");
        }
    }

    private void Begin(string name)
    {
        lock (changing)
        {
            double now = Processor();
            if (at.Length > 0)
            {
                seconds[at] = now - since;
            }

            (at, since) = (name, now);
            clock.Restart();
        }
    }

    private double Processor()
    {
        try
        {
            run.Refresh();
            return run.TotalProcessorTime.TotalSeconds;
        }
        catch (Exception e) when (e is InvalidOperationException or Win32Exception)
        {
            // It has ended.
            return since;
        }
    }
}
