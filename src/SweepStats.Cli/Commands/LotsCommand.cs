using System.CommandLine;
using SweepStats.Files.Results;
using SweepStats.Lots;
using SweepStats.Report.History;
using SweepStats.Report.Lots;
using SweepStats.Report.Trends;

namespace SweepStats.Cli.Commands;

/// <summary>
/// sweepstats lots: is this lot like that one? Of one campaign, or of several with a reference each. Writes only a report on
/// several, where asked for.
/// </summary>
internal static class LotsCommand
{
    /// <summary>The command; gated, every one of the campaigns has to pass.</summary>
    public static Command Create(Terminal terminal)
    {
        var options = new CampaignOptions();
        var folders = new Argument<string[]>("CAMPAIGN")
        {
            Description =
            "Campaign folders; lots of several are compared with each other",
            Arity = ArgumentArity.OneOrMore,
        };
        Option<string?> to =
            ReportOutput.To("Folder for a report on the lots of several campaigns; none is written unless given");
        Option<bool> png = ReportOutput.Png();
        var command =
            new Command("lots", "Say whether lots are alike, how much specimens scatter, and what each lot promises; or how "
                + "shielding changes with washes, folds or months");
        options.AddTo(command, campaign: folders);
        command.Options.Add(options.Whole);
        command.Options.Add(to);
        command.Options.Add(png);
        ReportOutput.NeedFolder(command, png, to);
        command.Validators.Add(result =>
        {
            if (result.GetResult(to) is not null && result.GetValue(folders) is { Length: 1 })
            {
                result.AddError("--out is for several campaigns; 'sweepstats run' writes the report of one");
            }
        });
        command.SetAction(words =>
            Run(words, options, new(words.GetValue(folders)!, words.GetValue(to), words.GetValue(png)), terminal));
        return command;
    }

    private static int Run(ParseResult words, CampaignOptions options, Asked asked, Terminal terminal)
    {
        if (asked.Target is { } target && ReportFolder.Refusal(target, asked.Folders) is { } refusal)
        {
            terminal.Error.WriteLine(refusal);
            return ExitCode.BadInput;
        }

        if (SameTwice(asked.Folders) is { } twice)
        {
            terminal.Error.WriteLine($"sweepstats: {twice} is named twice; name each campaign once");
            return ExitCode.BadInput;
        }

        if (Analysed(words, options, asked.Folders, terminal) is not { } analyses)
        {
            return ExitCode.BadInput;
        }

        LotHistory? together = null;
        if (analyses.Count > 1)
        {
            together = Together(analyses, Labels(analyses, asked.Folders), terminal);
            if (together is null || (asked.Target is not null && !Write(together, analyses, asked, terminal)))
            {
                return ExitCode.BadInput;
            }
        }

        if (!words.GetValue(options.Quiet))
        {
            Print(words, options, new(analyses, together, asked), terminal);
        }

        return words.GetValue(options.Gate) && !analyses.TrueForAll(a => a.Passes) ? ExitCode.Gated : ExitCode.Done;
    }

    private static List<CampaignAnalysis>? Analysed(ParseResult words, CampaignOptions options, string[] folders,
        Terminal terminal)
    {
        CampaignAnalysis?[] read = [.. folders.Select(folder => CampaignAnalysis.Of(folder, words, options, terminal))];
        if (read.Contains(null))
        {
            return null;
        }

        List<CampaignAnalysis> analyses = [.. read.Select(a => a!)];
        if (Copies(analyses, folders) is { } copies)
        {
            terminal.Error.WriteLine($"sweepstats: {copies} hold the same sweeps; a copy is no second campaign");
            return null;
        }

        return analyses;
    }

    private static void Print(ParseResult words, CampaignOptions options, Found found, Terminal terminal)
    {
        if (words.GetValue(options.Format) == "json")
        {
            terminal.Out.WriteLine(Json(found.Analyses, found.Together, found.Asked.Folders));
            return;
        }

        terminal.WriteFirst(Text(found.Analyses, found.Together, found.Asked), words.GetValue(options.Whole));
    }

    private static bool Write(LotHistory together, List<CampaignAnalysis> analyses, Asked asked, Terminal terminal) =>
        ReportOutput.Write(
            new WantedReport(asked.Target!, analyses[0].Result.Plan.Threads)
            {
                Pages = () => LotHistoryReport.Build(together, [.. analyses.Select(a => a.Result)], asked.Png),
                Tables =
                [
                    new(LotsCsv.FileName, stream => LotHistoryCsv.Write(together, stream)),
                    new(LotHistoryPairsCsv.FileName, stream => LotHistoryPairsCsv.Write(together, stream)),
                    new(LotFrequenciesCsv.FileName, stream => LotHistoryFrequenciesCsv.Write(together, stream)),
                ],
                Summary = (written, stream) =>
                    SummaryText.Write(together, [.. asked.Folders.Zip(analyses, Named)], written, stream),
            },
            terminal);

    private static string? SameTwice(string[] folders) =>
        folders.GroupBy(f => Path.TrimEndingDirectorySeparator(Path.GetFullPath(f)), StringComparer.Ordinal)
            .FirstOrDefault(g => g.Count() > 1)?.First();

    private static string? Copies(List<CampaignAnalysis> analyses, string[] folders) => analyses
        .Select((a, i) => (Folder: CampaignAnalysis.Named(folders[i]),
            Hashes: string.Concat(a.Reading.Inputs.Where(f => f.Path.Contains('/')).Select(f => f.Sha256)
                .Order(StringComparer.Ordinal))))
        .GroupBy(a => a.Hashes).FirstOrDefault(g => g.Key.Length > 0 && g.Count() > 1) is { } alike
        ? string.Join(" and ", alike.Select(a => a.Folder)) : null;

    // What the campaigns call themselves; with the folder where two do alike.
    private static string[] Labels(List<CampaignAnalysis> analyses, string[] folders) =>
        [.. analyses.Select((a, i) => analyses.Count(o => o.Result.Title == a.Result.Title) == 1 ? a.Result.Title
            : $"{a.Result.Title} ({Short(folders, i)})")];

    private static string Short(string[] folders, int place)
    {
        string[] names = [.. folders.Select(f => new DirectoryInfo(f).Name)];
        return names.Count(n => n == names[place]) == 1 ? names[place] : CampaignAnalysis.Named(folders[place]);
    }

    private static LotHistory? Together(List<CampaignAnalysis> analyses, string[] labels, Terminal terminal)
    {
        CampaignLots[] campaigns =
            [.. analyses.Select((a, i) => new CampaignLots(labels[i], a.Result.Campaign,
                a.Result.Curves) { NamedBands = a.Result.Plan.NamedBands, Yardstick = a.Result.Plan.Choice.Yardstick })];
        if (LotHistoryComparer.SharedBand(campaigns) is null)
        {
            terminal.Error.WriteLine("sweepstats: the campaigns share no frequency; name campaigns that cover a common band");
            return null;
        }

        return LotHistoryComparer.Of(campaigns, analyses[0].Result.Lots.Question);
    }

    private static NamedAnalysis Named(string folder, CampaignAnalysis analysis) => new(CampaignAnalysis.Named(folder), analysis);

    // What was asked of several comes first.
    private static List<string> Text(List<CampaignAnalysis> analyses, LotHistory? together, Asked asked)
    {
        string[] labels = Labels(analyses, asked.Folders);
        List<string> lines = together is null ? []
            : [.. HistoryWords.LotHistoryText(together, [.. analyses.Select(a => a.Result)])];
        for (int i = 0; i < analyses.Count; i++)
        {
            lines.AddRange(together is null ? [] : [string.Empty]);
            AnalysisResult result = analyses[i].Result;
            lines.AddRange(result.Trend is null ? LotWords.LotsText(result, labels[i]) : TrendWords.TrendText(result, labels[i]));
            lines.AddRange(analyses[i].LeftOutLines);
        }

        return asked.Target is null ? lines : [.. lines, $"Report: {Path.Combine(asked.Target, "index.html")}"];
    }

    private static string Json(List<CampaignAnalysis> analyses, LotHistory? together, string[] folders) => ResultJson.Of(json =>
    {
        json.WriteStartArray("campaigns");
        foreach ((CampaignAnalysis analysis, string folder) in analyses.Zip(folders))
        {
            json.WriteStartObject();
            json.WriteString("folder", CampaignAnalysis.Named(folder));
            json.WriteString("title", analysis.Result.Title);
            LotsJson.Write(json, analysis.Result);
            ResultJson.LeftOut(json, analysis);
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
            TogetherJson.Write(json, together);
            json.WriteEndObject();
        }
    });

    /// <summary>
    /// What the command line names: campaigns, the folder of the report (null for none), and whether charts are PNG too.
    /// </summary>
    private sealed record Asked(string[] Folders, string? Target, bool Png);

    /// <summary>One analysis a campaign, and their comparison (null for one alone).</summary>
    private sealed record Found(List<CampaignAnalysis> Analyses, LotHistory? Together, Asked Asked);
}
