using System.CommandLine;
using System.Text;
using SweepStats.Cli.Look;
using SweepStats.Cli.Plot;
using SweepStats.Files;
using SweepStats.Files.Traces;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats look: how trace files are understood.</summary>
internal static class LookCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new LookOptions();
        var command = new Command("look", "Show how trace files are understood: traces, units, settings, doubts");
        options.AddTo(command);
        command.SetAction(words => Run(words, options, terminal));
        return command;
    }

    private static int Run(ParseResult words, LookOptions options, Terminal terminal)
    {
        string[] files = words.GetValue(options.Files)!;
        TraceReadOptions known = options.Reading(words);
        if (words.GetValue(options.Quiet))
        {
            return Shown(files, known, (_, _) => { }, Complain(terminal));
        }

        if (words.GetValue(options.Format) == "json")
        {
            return PrintJson(files, known, terminal);
        }

        bool ascii = words.GetValue(options.Ascii) || !ShowsBraille(terminal.Out.Encoding);
        var text = new LookText(words.GetValue(options.NoPlot) ? null : new TracePlot(ascii));
        string between = "";
        return Shown(files, known, Print, Complain(terminal));

        void Print(string file, TraceReading reading)
        {
            terminal.Out.Write(between);
            between = terminal.Out.NewLine;
            foreach (string line in text.Of(file, reading))
            {
                terminal.Out.WriteLine(ascii ? PrintedText.Ascii(line) : line);
            }
        }
    }

    private static int PrintJson(string[] files, TraceReadOptions known, Terminal terminal)
    {
        using var bytes = new MemoryStream();
        int code;
        using (var json = new LookJson(bytes))
        {
            code = Shown(files, known, json.Add, json.Add);
            json.End();
        }

        terminal.Out.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
        return code;
    }

    // One file after the other, each let go before the next is opened: two big ones need not fit into memory together.
    private static int Shown(string[] files, TraceReadOptions known, Action<string, TraceReading> show, Action<string, TraceReading> refuse)
    {
        int code = ExitCode.Done;
        foreach (string path in files)
        {
            code = WasShown(path, known, show, refuse) ? code : ExitCode.BadInput;
        }

        return code;
    }

    private static bool WasShown(string path, TraceReadOptions known, Action<string, TraceReading> show, Action<string, TraceReading> refuse)
    {
        string file = Path.DirectorySeparatorChar == '/' ? path : path.Replace(Path.DirectorySeparatorChar, '/');
        TraceReading reading = Directory.Exists(path) ? Folder(file) : TraceFile.Look(path, file, known);
        bool isRead = reading.Faults.IsEmpty;
        (isRead ? show : refuse)(file, reading);
        return isRead;
    }

    private static TraceReading Folder(string name) =>
        new() { Faults = [new ReadFault(name, null, "this is a folder", $"name files, e.g. {ShellWord.Of(name.TrimEnd('/'))}/*.csv")] };

    private static Action<string, TraceReading> Complain(Terminal terminal) => (_, reading) =>
    {
        foreach (ReadFault fault in reading.Faults)
        {
            terminal.Error.WriteLine(PrintedText.Of(fault.ToString()));
        }
    };

    private static bool ShowsBraille(Encoding encoding)
    {
        const string dots = "\u28FF";
        return encoding.GetString(encoding.GetBytes(dots)) == dots;
    }
}
