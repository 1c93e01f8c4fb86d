using System.CommandLine;
using SweepStats.Report.Findings;
using SweepStats.Report.Screens;
using SweepStats.Report.Text;
using SweepStats.Verdicts;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats check: is the measurement trustworthy? Findings on the console, nothing written.</summary>
internal static class CheckCommand
{
    /// <summary>The command; an untrustworthy measurement ends with <see cref="ExitCode.Gated"/>, gated or not.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new CampaignOptions();
        var command = new Command("check", "Say whether a measurement can be trusted; exit with 1 if it cannot");
        options.AddTo(command);
        command.Options.Add(options.Verbose);
        command.SetAction(words => Run(words, options, terminal));
        return command;
    }

    private static int Run(ParseResult words, CampaignOptions options, Terminal terminal)
    {
        if (CampaignAnalysis.Of(words, options, terminal) is not { } analysis)
        {
            return ExitCode.BadInput;
        }

        if (!words.GetValue(options.Quiet))
        {
            if (words.GetValue(options.Format) == "json")
            {
                terminal.Out.WriteLine(SummaryText.Text(stream => SummaryText.Write(analysis, [], stream)));
            }
            else
            {
                terminal.Write(Lines(analysis, words.GetValue(options.Verbose), terminal.Columns ?? WrappedLine.Usual));
            }
        }

        bool trusted = analysis.Result.Verdict.Trust != Trust.Untrustworthy;
        return trusted && (!words.GetValue(options.Gate) || analysis.Passes) ? ExitCode.Done : ExitCode.Gated;
    }

    private static IEnumerable<string> Lines(CampaignAnalysis analysis, bool verbose, int columns) =>
        verbose ? FindingWords.Check(analysis.Result).Concat(analysis.LeftOutLines)
        : FirstScreenWords.FirstCheck(analysis.Result, columns,
            [.. analysis.LeftOutInOneLine, "Each finding with its reasons: --verbose"]);
}
