using System.CommandLine;
using SweepStats.Files.Results;
using SweepStats.Report.Choice;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats choose: which specimen is best, as far as it can be told. Nothing is written.</summary>
internal static class ChooseCommand
{
    /// <summary>The command; a campaign with nothing to choose from is bad input.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new CampaignOptions();
        var command = new Command("choose", "Rank specimens by what can be claimed, and say which cannot be told from the best");
        options.AddTo(command);
        command.Options.Add(options.Seed);
        command.Options.Add(options.Whole);
        command.SetAction(words => Run(words, options, terminal));
        return command;
    }

    private static int Run(ParseResult words, CampaignOptions options, Terminal terminal)
    {
        if (CampaignAnalysis.Of(words, options, terminal) is not { } analysis)
        {
            return ExitCode.BadInput;
        }

        if (analysis.Result.Choice is null)
        {
            terminal.Error.WriteLine($"{CampaignAnalysis.Named(words.GetValue(options.Campaign)!)}: "
                + $"{ChoiceWords.NothingToChoose(analysis.Result)} Put the sweeps of each under covered/<lot>/<specimen>.");
            return ExitCode.BadInput;
        }

        if (!words.GetValue(options.Quiet))
        {
            Print(words, options, analysis, terminal);
        }

        return words.GetValue(options.Gate) && !analysis.Passes ? ExitCode.Gated : ExitCode.Done;
    }

    private static void Print(ParseResult words, CampaignOptions options, CampaignAnalysis analysis, Terminal terminal)
    {
        if (words.GetValue(options.Format) == "json")
        {
            terminal.Out.WriteLine(Json(analysis));
            return;
        }

        terminal.WriteFirst(
            [.. ChoiceWords.ChoiceText(analysis.Result), .. analysis.LeftOutLines], words.GetValue(options.Whole));
    }

    private static string Json(CampaignAnalysis analysis) => ResultJson.Of(json =>
    {
        ChoiceJson.Write(json, analysis.Result.Choice!, analysis.Result.Plan.Confidence);
        ResultJson.LeftOut(json, analysis);
    });
}
