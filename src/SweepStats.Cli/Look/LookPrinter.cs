using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>Prints what was seen of files, with an empty line between them.</summary>
internal sealed class LookPrinter(LookText text, Terminal terminal, bool ascii)
{
    private string _between = "";

    /// <summary>Prints a file that could be read, after an empty line unless it is the first.</summary>
    public void Print(string file, SeenFile seen, TraceReadOptions known)
    {
        terminal.Out.Write(_between);
        _between = terminal.Out.NewLine;
        Write(text.Of(file, seen, known));
    }

    /// <summary>Prints lines as they are, in plain characters where only these can be shown.</summary>
    public void Write(IEnumerable<string> lines)
    {
        foreach (string line in lines)
        {
            terminal.Out.WriteLine(ascii ? PrintedText.Ascii(line) : line);
        }
    }
}
