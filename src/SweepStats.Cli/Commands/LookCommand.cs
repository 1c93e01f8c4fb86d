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
    /// <summary>The command; it needs no campaign, and writes readings to a file only with --values.</summary>
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
        if (words.GetValue(options.Values) is not { } target)
        {
            return Look(words, options, terminal, null);
        }

        if (ValuesPlace.Refusal(target, files) is { } fault)
        {
            Complain([fault], terminal);
            return ExitCode.BadInput;
        }

        using var values = new ValuesFile(target);
        try
        {
            int code = Look(words, options, terminal, values);
            if (values.Commit() is { } missing)
            {
                terminal.Error.WriteLine(PrintedText.Of(missing));
            }

            return code;
        }
        catch (IOException e) when (values.IsMeant(e))
        {
            throw values.Told(e);
        }
    }

    private static int Look(ParseResult words, LookOptions options, Terminal terminal, ValuesFile? values)
    {
        TraceReadOptions known = options.Reading(words);
        var looked = new LookedFiles(words.GetValue(options.Files)!, known, values);
        if (words.GetValue(options.Quiet))
        {
            return looked.Show((_, seen) => Complain(seen.Refusal, terminal), Refused);
        }

        if (words.GetValue(options.Format) == "json")
        {
            return PrintJson(looked, terminal);
        }

        bool ascii = words.GetValue(options.Ascii) || !ShowsBraille(terminal.Out.Encoding);
        var text = new LookText(words.GetValue(options.NoPlot) ? null : new TracePlot(ascii));
        var printer = new LookPrinter(text, terminal, ascii);
        return looked.Show((file, seen) => printer.Print(file, seen, known), (file, reading) =>
        {
            Refused(file, reading);
            printer.Write(PasteLines.Of(file, reading.Faults, known));
        });

        void Refused(string file, TraceReading reading) => Complain(reading.Faults, terminal);
    }

    private static int PrintJson(LookedFiles looked, Terminal terminal)
    {
        using var bytes = new MemoryStream();
        int code;
        using (var json = new LookJson(bytes))
        {
            code = looked.Show(json.Add, json.Refuse);
            json.End();
        }

        terminal.Out.WriteLine(Encoding.UTF8.GetString(bytes.ToArray()));
        return code;
    }

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
