using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using SweepStats.Acceptance.Commands;
using Xunit;

namespace SweepStats.Acceptance.Faults;

/// <summary>Runs of the program on something mutated, each held against what is promised of every run.</summary>
internal sealed partial class Attacks
{
    private const string Switch = "SWEEPSTATS_ATTACKS";

    // Of the processor, where nothing else runs in the process; by the clock many times as much, since a machine may be busy with
    // others.
    private static readonly TimeSpan Hang = TimeSpan.FromSeconds(2), HangByTheClock = TimeSpan.FromMinutes(2);

    private readonly List<string> _broken = [];
    private readonly int[] _codes = new int[256];
    private TimeSpan _slowest;

    /// <summary>
    /// How many are tried: a few hundredths of the full number day by day, all of it where tests/faults/faults.sh asks for it.
    /// </summary>
    public static int Of(int all) => IsFull ? all : Math.Max(1, all / 100);

    private static bool IsFull => Environment.GetEnvironmentVariable(Switch) == "full";

    public void Try(string what, params string[] words)
    {
        // The first run of something compiles it: a hang is one that hangs again.
        if (!Try(what, words, again: false))
        {
            Try(what, words, again: true);
        }
    }

    private bool Try(string what, string[] words, bool again)
    {
        var clock = Stopwatch.StartNew();
        TimeSpan before = Environment.CpuUsage.TotalTime;
        (int code, string output, string error) = Shell.Run(words);
        TimeSpan took = Environment.CpuUsage.TotalTime - before;
        if (took > Hang && !again)
        {
            return false;
        }

        _codes[code]++;
        if (took > _slowest)
        {
            _slowest = took;
        }

        string? broken = code is not (0 or 1 or 2) ? $"exit code {code}: {error}"
            : code == 2 && output.Length > 0 ? $"output beside an error: {output}"
            : code == 2 && error.Length == 0 ? "an error without a word"
            : code != 2 && error.Length > 0 ? $"an error beside success: {error}"
            : error.Count(c => c == '\n') > 1100 ? "a flood of errors"
            : StackTrace().IsMatch(error) ? "a stack trace"
            : (IsFull && took > Hang) || clock.Elapsed > HangByTheClock
            ? $"took {took.TotalSeconds:0.0} s of the processor, {clock.Elapsed.TotalSeconds:0.0} s by the clock" : null;
        if (broken is not null)
        {
            _broken.Add($"{broken}\n  {string.Join(' ', words)}\n  {what}");
        }

        return true;
    }

    /// <summary>Fails with the first few broken promises, and leaves the counts beside the program.</summary>
    public void Hold(string name)
    {
        File.WriteAllText(Path.Combine(AppContext.BaseDirectory, $"attacks-{name}.txt"),
            string.Create(CultureInfo.InvariantCulture,
            $"{_codes.Sum()} tried: {_codes[0]} done, {_codes[1]} gated, {_codes[2]} refused; {_broken.Count} promises broken; "
                + $"the slowest took {_slowest.TotalSeconds:0.00} s of the processor\n"));
        Assert.True(_broken.Count == 0, string.Join("\n\n", _broken.Take(5)));
    }

    [GeneratedRegex("^ +at [A-Z]", RegexOptions.Multiline)]
    private static partial Regex StackTrace();
}
