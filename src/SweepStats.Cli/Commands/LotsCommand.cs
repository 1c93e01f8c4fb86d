using System.CommandLine;
using SweepStats.Files.Results;
using SweepStats.Lots;
using SweepStats.Report;

namespace SweepStats.Cli.Commands;

/// <summary>sweepstats lots: is this lot like that one? Of one campaign, or of several with a reference each. Nothing is written.</summary>
internal static class LotsCommand
{
    public static Command Create(Terminal terminal)
    {
        var options = new CampaignOptions();
        var folders = new Argument<string[]>("CAMPAIGN") { Description = "Campaign folders; lots of several are compared with each other", Arity = ArgumentArity.OneOrMore };
        Option<string?> to = ReportOutput.To("Folder for a report on the lots of several campaigns; none is written unless given");
        Option<bool> png = ReportOutput.Png();
        var command = new Command("lots", "Say whether lots are alike, how much pieces scatter, and what each lot promises");
        options.AddTo(command, campaign: folders);
        command.Options.Add(to);
        command.Options.Add(png);
        command.Validators.Add(result =>
        {
            if (result.GetResult(to) is not null && result.GetValue(folders) is { Length: 1 })
            {
                result.AddError("--out is for several campaigns; 'sweepstats run' writes the report of one");
            }
        });
        command.SetAction(words => Run(words, options, (words.GetValue(folders)!, words.GetValue(to), words.GetValue(png)), terminal));
        return command;
    }

    private static int Run(ParseResult words, CampaignOptions options, (string[] Folders, string? Target, bool Png) asked, Terminal terminal)
    {
        if (asked.Target is { } target && ReportFolder.Refusal(target) is { } refusal)
        {
            terminal.Error.WriteLine(refusal);
            return ExitCode.BadInput;
        }

        CampaignAnalysis?[] read = [.. asked.Folders.Select(folder => CampaignAnalysis.Of(folder, words, options, terminal))];
        if (read.Contains(null))
        {
            return ExitCode.BadInput;
        }

        List<CampaignAnalysis> analyses = [.. read.Select(a => a!)];
        LotHistory? together = null;
        if (analyses.Count > 1)
        {
            together = Together(analyses, asked.Folders, terminal);
            if (together is null || (asked.Target is not null && !Write(together, analyses, asked, terminal)))
            {
                return ExitCode.BadInput;
            }
        }

        if (!words.GetValue(options.Quiet))
        {
            foreach (string line in words.GetValue(options.Format) == "json" ? [Json(analyses, together)] : Text(analyses, together, asked.Target))
            {
                terminal.Out.WriteLine(line);
            }
        }

        return words.GetValue(options.Gate) && !analyses.TrueForAll(a => a.Passes) ? ExitCode.Gated : ExitCode.Done;
    }

    private static bool Write(LotHistory together, List<CampaignAnalysis> analyses, (string[] Folders, string? Target, bool Png) asked, Terminal terminal) =>
        ReportOutput.Write(asked.Target!, () => LotHistoryReport.Build(together, [.. analyses.Select(a => a.Result)], asked.Png), terminal, folder =>
        {
            ReportOutput.Put(folder, LotsCsv.FileName, stream => LotHistoryCsv.Write(together, stream));
            return SummaryText.Of(together, [.. asked.Folders.Select(CampaignAnalysis.Named).Zip(analyses)], folder.Written());
        }) is not null;

    // What the campaigns call themselves, unless two do alike.
    private static LotHistory? Together(List<CampaignAnalysis> analyses, string[] folders, Terminal terminal)
    {
        string[] titles = [.. analyses.Select(a => a.Result.Title)];
        bool distinct = titles.Distinct(StringComparer.Ordinal).Count() == titles.Length;
        CampaignLots[] campaigns = [.. analyses.Select((a, i) => new CampaignLots(distinct ? titles[i] : CampaignAnalysis.Named(folders[i]), a.Result.Campaign, a.Result.Curves))];
        if (LotHistoryComparer.SharedBand(campaigns) is null)
        {
            terminal.Error.WriteLine("sweepstats: the campaigns share no frequency; name campaigns that cover a common band");
            return null;
        }

        return LotHistoryComparer.Of(campaigns, analyses[0].Result.Lots.Question);
    }

    private static IEnumerable<string> Text(List<CampaignAnalysis> analyses, LotHistory? together, string? report)
    {
        foreach (CampaignAnalysis analysis in analyses)
        {
            foreach (string line in (IEnumerable<string>)[.. Wording.LotsText(analysis.Result), .. analysis.Reading.LeftOut.Select(file => $"Left out: {file}")])
            {
                yield return line;
            }

            if (together is not null)
            {
                yield return string.Empty;
            }
        }

        foreach (string line in together is null ? [] : Wording.LotHistoryText(together))
        {
            yield return line;
        }

        if (report is not null)
        {
            yield return $"Report: {Path.Combine(report, "index.html")}";
        }
    }

    private static string Json(List<CampaignAnalysis> analyses, LotHistory? together) => ResultJson.Of(json =>
    {
        json.WriteStartArray("campaigns");
        foreach (CampaignAnalysis analysis in analyses)
        {
            json.WriteStartObject();
            json.WriteString("title", analysis.Result.Title);
            LotsJson.Write(json, analysis.Result.Lots);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        if (together is null)
        {
            json.WriteNull("together");
        }
        else
        {
            json.WriteStartObject("together");
            LotsJson.Write(json, together);
            json.WriteEndObject();
        }
    });
}
