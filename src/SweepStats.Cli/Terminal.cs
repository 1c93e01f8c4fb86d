using SweepStats.Report.Screens;
using SweepStats.Report.Text;

namespace SweepStats.Cli;

/// <summary>Where a command writes.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Errors, one a line, and progress.</param>
/// <param name="Interactive">A person is watching: progress may be shown.</param>
internal sealed record Terminal(TextWriter Out, TextWriter Error, bool Interactive)
{
    /// <summary>Width of the console that a person watches; null where the output goes to a file or another program.</summary>
    public int? Columns { get; init; }

    /// <summary>
    /// The same console where it shows colours and the person wants them: takes what <see cref="Out"/> takes for steering. Null
    /// elsewhere.
    /// </summary>
    public TextWriter? Coloured { get; init; }

    /// <summary>Writes results, broken between words where a person watches; a program gets whole lines.</summary>
    public void Write(IEnumerable<string> lines)
    {
        TextWriter to = Columns is null ? Out : Coloured ?? Out;
        foreach (string line in Columns is { } width ? lines.SelectMany(line => Broken(line, width)) : lines)
        {
            to.WriteLine(line);
        }
    }

    /// <summary>
    /// Writes an answer that may be long: a person sees the first screen of it, a program or one who asks for all of it gets all.
    /// </summary>
    public void WriteFirst(IReadOnlyList<string> lines, bool verbose) =>
        Write(Columns is { } width && !verbose ? FirstLines.Of(lines, width) : lines);

    /// <summary>Writes results with the rows of a table cut at the width of a person's console: broken they are none.</summary>
    public void WriteTable(IEnumerable<string> lines) =>
        Write(Columns is { } width
            ? lines.Select(line => line.StartsWith(' ') && line.Length > width ? line[..(width - 1)] + "…" : line) : lines);

    private IReadOnlyList<string> Broken(string line, int width) =>
        Coloured is null ? WrappedLine.Of(line, width) : ConsoleColour.Of(line, WrappedLine.Of(HarmlessWriter.Text(line), width));
}
