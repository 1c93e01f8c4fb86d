using System.CommandLine;
using SweepStats.Fields;
using SweepStats.Files.Results;
using SweepStats.Report.Fields;
using SweepStats.Report.Text;

namespace SweepStats.Cli.Commands;

/// <summary>
/// sweepstats field: what is left of a steady field and of a pulse behind the specimens. Writes only where asked for.
/// </summary>
internal static class FieldCommand
{
    private static readonly Dictionary<string, OutsideBand> Outside = new(StringComparer.Ordinal)
    {
        ["none"] = OutsideBand.None,
        ["hold"] = OutsideBand.Hold,
        ["slope"] = OutsideBand.Slope,
    };

    /// <summary>The command; it writes tables, chart and summary only with --out.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new CampaignOptions();
        var outside = new Option<string?>("--outside")
        {
            Description = "Shielding taken outside the measured band: none, the end's reading, or the end's slope; "
                + "instead of what campaign.toml says",
            HelpName = string.Join('|', Outside.Keys),
        };
        outside.AcceptOnly([.. Outside.Keys]);
        Option<string?> to = ReportOutput.To("Folder for field.csv and a chart; none is written unless given");
        Option<bool> png = ReportOutput.Png();
        var command = new Command("field", "Say what is left of a steady field and of a pulse behind the specimens");
        options.AddTo(command);
        foreach (Option option in (Option[])[options.Verbose, outside, to, png])
        {
            command.Options.Add(option);
        }

        ReportOutput.NeedFolder(command, png, to);
        command.SetAction(words => Run(
            words, options, new WantedField(words.GetValue(outside), words.GetValue(to), words.GetValue(png)), terminal));
        return command;
    }

    private static int Run(ParseResult words, CampaignOptions options, WantedField asked, Terminal terminal)
    {
        if (asked.Folder is { } target && ReportFolder.Refusal(target, [words.GetValue(options.Campaign)!]) is { } refusal)
        {
            terminal.Error.WriteLine(refusal);
            return ExitCode.BadInput;
        }

        if (CampaignAnalysis.Of(words, options, terminal, plan => Asked(plan, asked.Outside)) is not { } analysis)
        {
            return ExitCode.BadInput;
        }

        if (asked.Folder is { } folder && !Write(analysis, folder, asked.Png, terminal))
        {
            return ExitCode.BadInput;
        }

        if (!words.GetValue(options.Quiet))
        {
            Print(analysis, words, options, asked.Folder, terminal);
        }

        return words.GetValue(options.Gate) && !analysis.Passes ? ExitCode.Gated : ExitCode.Done;
    }

    private static AnalysisPlan Asked(AnalysisPlan plan, string? outside) =>
        outside is null ? plan : plan with { Pulse = plan.Pulse with { Outside = Outside[outside] } };

    private static bool Write(CampaignAnalysis analysis, string folder, bool png, Terminal terminal)
    {
        var report = new WantedReport(folder, analysis.Result.Plan.Threads)
        {
            Pages = () => FieldReport.Build(analysis.Result, png),
            Tables = [new(FieldCsv.FileName, stream => FieldCsv.Write(analysis.Result, stream))],
            Summary = (written, stream) => SummaryText.Write(analysis, written, stream),
        };
        return ReportOutput.Write(report, terminal);
    }

    private static void Print(CampaignAnalysis analysis, ParseResult words, CampaignOptions options, string? folder,
        Terminal terminal)
    {
        if (words.GetValue(options.Format) == "json")
        {
            terminal.Out.WriteLine(ResultJson.Of(json =>
            {
                FieldJson.Write(json, analysis.Result);
                ResultJson.LeftOut(json, analysis);
            }));
            return;
        }

        string[] written = folder is null ? [] : [$"Written: {Path.Combine(folder, FieldCsv.FileName)}"];
        terminal.Write(words.GetValue(options.Verbose)
            ? [.. FieldScreenWords.FieldText(analysis.Result), .. analysis.LeftOutLines, .. written]
            : FieldScreenWords.FirstField(analysis.Result, terminal.Columns ?? WrappedLine.Usual,
                [.. analysis.LeftOutInOneLine, .. written]));
    }

    private sealed record WantedField(string? Outside, string? Folder, bool Png);
}
