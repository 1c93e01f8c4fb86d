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

        var text = new LookText(words.GetValue(options.NoPlot) ? null : new TracePlot(words.GetValue(options.Ascii) || !ShowsBraille(terminal.Out.Encoding)));
        bool first = true;
        return Shown(files, known, (file, reading) => Print(text.Of(file, reading), terminal, ref first), Complain(terminal));
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
            string file = Path.DirectorySeparatorChar == '/' ? path : path.Replace(Path.DirectorySeparatorChar, '/');
            TraceReading reading = Directory.Exists(path) ? Folder(file) : TraceFile.Look(path, file, known);
            if (reading.Faults.IsEmpty)
            {
                show(file, reading);
            }
            else
            {
                refuse(file, reading);
                code = ExitCode.BadInput;
            }
        }

        return code;
    }

    private static TraceReading Folder(string name) =>
        new() { Faults = [new ReadFault(name, null, "this is a folder", $"name files, e.g. {name.TrimEnd('/')}/*.csv")] };

    private static Action<string, TraceReading> Complain(Terminal terminal) => (_, reading) =>
    {
        foreach (ReadFault fault in reading.Faults)
        {
            terminal.Error.WriteLine(PrintedText.Of(fault.ToString()));
        }
    };

    private static void Print(IEnumerable<string> lines, Terminal terminal, ref bool first)
    {
        if (!first)
        {
            terminal.Out.WriteLine();
        }

        first = false;
        foreach (string line in lines)
        {
            terminal.Out.WriteLine(line);
        }
    }

    private static bool ShowsBraille(Encoding encoding)
    {
        const string dots = "\u28FF";
        return encoding.GetString(encoding.GetBytes(dots)) == dots;
    }
}
