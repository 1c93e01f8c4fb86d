using System.CommandLine;
using SweepStats.Cli.Compare;
using SweepStats.Cli.Look;
using SweepStats.Files;
using SweepStats.Files.Summaries;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats compare: what differs between two results. Writes nothing.</summary>
internal static class CompareCommand
{
    /// <summary>The command; gated, it exits with <see cref="ExitCode.Gated"/> where anything that is compared differs.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new CampaignOptions();
        var earlier = new Argument<string>("EARLIER") { Description = "Report folder, or its summary.json" };
        var later = new Argument<string>("LATER") { Description = "The other, made with the same or other sweeps" };
        var gate = new Option<bool>("--gate") { Description = "Exit with 1 when anything that is compared differs" };
        var command = new Command("compare", "Say what differs between two reports: verdict, files, plan, findings, figures");
        options.Format.AcceptOnly("text", "json");
        foreach (Argument argument in (Argument[])[earlier, later])
        {
            command.Arguments.Add(argument);
        }

        foreach (Option option in (Option[])[options.Format, options.Quiet, options.Whole, gate])
        {
            command.Options.Add(option);
        }

        command.SetAction(words =>
        {
            string[] named = [words.GetValue(earlier)!, words.GetValue(later)!];
            SummaryReading[] read = [.. named.Select(SummaryReader.Read)];
            if (read is not [{ Summary: { } first }, { Summary: { } second }])
            {
                return Refused(read, terminal);
            }

            SummaryDifferences differences = SummaryDifferences.Between(first, second);
            Print(words, options, new DifferencesText(first, second, differences) { Folders = named }, terminal);
            return words.GetValue(gate) && !differences.AreNone ? ExitCode.Gated : ExitCode.Done;
        });
        return command;
    }

    private static int Refused(SummaryReading[] read, Terminal terminal)
    {
        foreach (ReadFault fault in read.Select(r => r.Fault).OfType<ReadFault>())
        {
            terminal.Error.WriteLine(PrintedText.Of(fault.ToString()));
        }

        return ExitCode.BadInput;
    }

    private static void Print(ParseResult words, CampaignOptions options, DifferencesText found, Terminal terminal)
    {
        if (words.GetValue(options.Quiet))
        {
            return;
        }

        if (words.GetValue(options.Format) == "json")
        {
            terminal.Out.WriteLine(found.Differences.Json());
        }
        else
        {
            terminal.WriteFirst([.. found.Lines()], words.GetValue(options.Whole));
        }
    }
}
