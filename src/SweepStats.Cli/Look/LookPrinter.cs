using SweepStats.Files.Traces;

namespace SweepStats.Cli.Look;

/// <summary>Prints what was seen of files, with an empty line between them.</summary>
internal sealed class LookPrinter(LookText text, Terminal terminal, bool ascii)
{
    private string _between = "";

    public void Print(string file, SeenFile seen, TraceReadOptions known)
    {
        terminal.Out.Write(_between);
        _between = terminal.Out.NewLine;
        Write(text.Of(file, seen, known));
    }

    public void Write(IEnumerable<string> lines)
    {
        foreach (string line in lines)
        {
            terminal.Out.WriteLine(ascii ? PrintedText.Ascii(line) : line);
        }
    }
}
