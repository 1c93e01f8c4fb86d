using SweepStats.Report;

namespace SweepStats.Cli;

/// <summary>Where a command writes.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Errors, one a line, and progress.</param>
/// <param name="Interactive">A person is watching: progress may be shown.</param>
internal sealed record Terminal(TextWriter Out, TextWriter Error, bool Interactive)
{
    /// <summary>Width of the console that a person watches; null where the output goes to a file or another program.</summary>
    public int? Columns { get; init; }

    /// <summary>Writes results, broken between words where a person watches; a program gets whole lines.</summary>
    public void Write(IEnumerable<string> lines)
    {
        foreach (string line in Columns is { } width ? lines.SelectMany(line => WrappedLine.Of(line, width)) : lines)
        {
            Out.WriteLine(line);
        }
    }
}
