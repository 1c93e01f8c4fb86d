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
        var command = new Command("lots", "Say whether lots are alike, how much pieces scatter, and what each lot promises");
        options.AddTo(command, campaign: folders);
        command.SetAction(words => Run(words, (options, words.GetValue(folders)!), terminal));
        return command;
    }

    private static int Run(ParseResult words, (CampaignOptions Options, string[] Folders) asked, Terminal terminal)
    {
        List<CampaignAnalysis> analyses = [];
        foreach (string folder in asked.Folders)
        {
            if (CampaignAnalysis.Of(folder, words, asked.Options, terminal) is { } analysis)
            {
                analyses.Add(analysis);
            }
        }

        if (analyses.Count < asked.Folders.Length)
        {
            return ExitCode.BadInput;
        }

        LotHistory? together = null;
        if (analyses.Count > 1)
        {
            try
            {
                together = Together(analyses, asked.Folders);
            }
            catch (ArgumentException e)
            {
                terminal.Error.WriteLine($"sweepstats: {e.Message.Split(" (Parameter", 2)[0]} Give campaigns that cover a common band.");
                return ExitCode.BadInput;
            }
        }

        if (!words.GetValue(asked.Options.Quiet))
        {
            foreach (string line in words.GetValue(asked.Options.Format) == "json" ? [Json(analyses, together)] : Text(analyses, together))
            {
                terminal.Out.WriteLine(line);
            }
        }

        return words.GetValue(asked.Options.Gate) && !analyses.TrueForAll(a => a.Passes) ? ExitCode.Gated : ExitCode.Done;
    }

    // What the campaigns call themselves, unless two do alike.
    private static LotHistory Together(List<CampaignAnalysis> analyses, string[] folders)
    {
        string[] titles = [.. analyses.Select(a => a.Result.Title)];
        bool distinct = titles.Distinct(StringComparer.Ordinal).Count() == titles.Length;
        return LotHistoryComparer.Of(
            [.. analyses.Select((a, i) => new CampaignLots(distinct ? titles[i] : CampaignAnalysis.Named(folders[i]), a.Result.Campaign, a.Result.Curves))],
            analyses[0].Result.Lots.Question);
    }

    private static IEnumerable<string> Text(List<CampaignAnalysis> analyses, LotHistory? together)
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
