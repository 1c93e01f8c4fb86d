using System.CommandLine;
using System.Globalization;
using SweepStats.Alignment;
using SweepStats.Files;
using SweepStats.Files.Campaigns;
using SweepStats.Report.Text;
using SweepStats.Verdicts;

namespace SweepStats.Cli;

/// <summary>Reads and analyses the campaign that a command names.</summary>
/// <param name="Reading">What was read.</param>
/// <param name="Result">What was found.</param>
internal sealed record CampaignAnalysis(CampaignReading Reading, AnalysisResult Result)
{
    // Reading takes most of the time: it has the first three quarters of the bar.
    private const double ReadingShare = 0.75;

    // A whole disk named by mistake has hundreds of thousands of faults.
    private const int MostForPerson = 40, MostForProgram = 1000;

    // More are a list that nobody reads.
    private const int MostUnlistedNamed = 2;

    /// <summary>
    /// Whether the result passes a gate: nothing against trusting it, and the requirement met where there is one.
    /// </summary>
    public bool Passes => Result.Verdict is { Trust: not Trust.Untrustworthy, Requirement: null or RequirementOutcome.Meets };

    /// <summary>
    /// What was left out at the user's wish, a line for files that the same is wrong with, and what the list does not name.
    /// </summary>
    public IEnumerable<string> LeftOutLines =>
        [.. Reading.LeftOutInBrief.Select(file => $"Left out: {file}"), .. Unlisted];

    /// <summary>The same in a line or two; none where nothing was left out.</summary>
    public IEnumerable<string> LeftOutInOneLine => Reading.LeftOutInBrief.Length < 2 ? LeftOutLines
        : [$"Left out: {Printed.Count(Reading.LeftOut.Length, "file")} that could not be read; what is wrong with each: "
            + "--verbose", .. Unlisted];

    private string[] Unlisted => Reading.Unlisted.IsEmpty ? [] :
    [
        $"Not read, since {CampaignFolder.ManifestName} does not list {(Reading.Unlisted.Length == 1 ? "it" : "them")}: "
            + PrintedNames.Listed([.. Reading.Unlisted], MostUnlistedNamed) + ".",
    ];

    /// <summary>Reads and analyses; null after writing what is wrong to the error stream.</summary>
    /// <param name="words">The command line.</param>
    /// <param name="options">Its options.</param>
    /// <param name="terminal">Told what is wrong.</param>
    /// <param name="change">What else the command line states; null for nothing.</param>
    public static CampaignAnalysis? Of(ParseResult words, CampaignOptions options, Terminal terminal,
        Func<AnalysisPlan, AnalysisPlan>? change = null) =>
        Of(words.GetValue(options.Campaign)!, words, options, terminal, change);

    /// <summary>Reads and analyses the campaign of a folder; null after writing what is wrong to the error stream.</summary>
    public static CampaignAnalysis? Of(string folder, ParseResult words, CampaignOptions options, Terminal terminal,
        Func<AnalysisPlan, AnalysisPlan>? change = null)
    {
        using var bar = new ProgressBar(terminal, !words.GetValue(options.Quiet));
        CampaignReading reading = CampaignFolder.Read(
            folder, new CampaignReadOptions(words.GetValue(options.KeepGoing), words.GetValue(options.Threads)),
            bar.Part("reading", 0, ReadingShare));
        if (reading.Campaign is null)
        {
            bar.Clear();
            // Who reads with a program asks for JSON, and wants each file by its name.
            bool each = words.GetValue(options.Format) == "json";
            Tell(each ? [.. reading.Faults.Select(f => f.ToString())] : [.. FaultDigest.Of(reading.Faults)],
                each ? MostForProgram : MostForPerson, terminal);

            return null;
        }

        try
        {
            AnalysisPlan plan = options.Apply(reading.Plan, words);
            return new CampaignAnalysis(reading,
                Analysis.Run(reading.Campaign, change?.Invoke(plan) ?? plan, bar.Part("analysing", ReadingShare, 1)));
        }
        catch (AlignmentException e)
        {
            bar.Clear();
            terminal.Error.WriteLine($"{Named(folder)}: {e.Message}");
            return null;
        }
    }

    private static void Tell(string[] faults, int most, Terminal terminal)
    {
        foreach (string fault in faults.Take(most))
        {
            terminal.Error.WriteLine(fault);
        }

        if (faults.Length > most)
        {
            terminal.Error.WriteLine(
                string.Create(CultureInfo.InvariantCulture, $"and {faults.Length - most} more; mend these first"));
        }
    }

    // "." names no campaign; any other path is told as it was typed.
    internal static string Named(string folder) =>
        folder.Trim('.', '/', '\\').Length == 0 ? new DirectoryInfo(folder).Name : folder;
}
