using System.Collections.Immutable;
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
            return Shown(files, known, (_, seen) => Complain(seen.Refusal, terminal), Refused);
        }

        if (words.GetValue(options.Format) == "json")
        {
            return PrintJson(files, known, terminal);
        }

        bool ascii = words.GetValue(options.Ascii) || !ShowsBraille(terminal.Out.Encoding);
        var text = new LookText(words.GetValue(options.NoPlot) ? null : new TracePlot(ascii));
        string between = "";
        return Shown(files, known, Print, (file, reading) =>
        {
            Refused(file, reading);
            Write(PasteLines.Of(file, reading.Faults, known));
        });

        void Refused(string file, TraceReading reading) => Complain(reading.Faults, terminal);

        void Write(IEnumerable<string> lines)
        {
            foreach (string line in lines)
            {
                terminal.Out.WriteLine(ascii ? PrintedText.Ascii(line) : line);
            }
        }

        void Print(string file, SeenFile seen)
        {
            terminal.Out.Write(between);
            between = terminal.Out.NewLine;
            Write(text.Of(file, seen, known));
        }
    }

    private static int PrintJson(string[] files, TraceReadOptions known, Terminal terminal)
    {
        using var bytes = new MemoryStream();
        int code;
        using (var json = new LookJson(bytes))
        {
            code = Shown(files, known, json.Add, json.Refuse);
            json.End();
        }

        terminal.Out.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
        return code;
    }

    // One file after the other, each let go before the next is opened: two big ones need not fit into memory together.
    private static int Shown(string[] files, TraceReadOptions known, Action<string, SeenFile> show, Action<string, TraceReading> refuse)
    {
        int code = ExitCode.Done;
        foreach (string path in files)
        {
            code = IsUsable(path, known, show, refuse) ? code : ExitCode.BadInput;
        }

        return code;
    }

    // A file of which a campaign takes no sweep is shown all the same: what is wrong with it is then seen.
    private static bool IsUsable(string path, TraceReadOptions known, Action<string, SeenFile> show, Action<string, TraceReading> refuse)
    {
        string file = Path.DirectorySeparatorChar == '/' ? path : path.Replace(Path.DirectorySeparatorChar, '/');
        TraceReading reading = Directory.Exists(path) ? Folder(file) : TraceFile.Look(path, file, known);
        if (!reading.Faults.IsEmpty)
        {
            refuse(file, reading);
            return false;
        }

        var seen = new SeenFile(reading, TraceFile.Taken(reading, file, known).Faults);
        show(file, seen);
        return seen.Refusal.IsEmpty;
    }

    private static TraceReading Folder(string name) =>
        new() { Faults = [new ReadFault(name, null, "this is a folder", $"name files, e.g. {ShellWord.Of(name.TrimEnd('/'))}/*.csv")] };

    private static void Complain(ImmutableArray<ReadFault> faults, Terminal terminal)
    {
        foreach (ReadFault fault in faults)
        {
            terminal.Error.WriteLine(PrintedText.Of(fault.ToString()));
        }
    }

    private static bool ShowsBraille(Encoding encoding)
    {
        const string dots = "\u28FF";
        return encoding.GetString(encoding.GetBytes(dots)) == dots;
    }
}
