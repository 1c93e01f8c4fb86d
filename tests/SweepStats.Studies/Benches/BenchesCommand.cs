using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace SweepStats.Studies.Benches;

/// <summary>benches: what the program says of campaigns that the R scripts in fixtures/oracles/benches drew.</summary>
internal static class BenchesCommand
{
    public const string Name = "benches";

    private const string Details = "--details";
    private const string Reports = "reports/benches";

    /// <summary>Reads every campaign below FOLDER/kind/number and writes the tables.</summary>
    /// <param name="words">FOLDER, then --details and the folder of the tables in any order.</param>
    public static int Run(ReadOnlySpan<string> words)
    {
        if (words.IsEmpty || !Directory.Exists(words[0]))
        {
            Console.Error.WriteLine($"usage: {Name} FOLDER [{Details}] [REPORTS]; FOLDER holds campaigns as FOLDER/kind/number");
            return 2;
        }

        bool details = words.Contains(Details);
        string[] others = [.. words[1..].ToArray().Where(w => w != Details)];
        string to = others is [var folder] ? folder : Reports;
        Directory.CreateDirectory(to);
        var each = new StringBuilder(BenchTables.DetailsHeader);
        ImmutableArray<KindTally> kinds = [.. Within(words[0]).Select(kind => Tally(kind, each))];
        Write(kinds, to);
        if (details)
        {
            File.WriteAllText(Path.Combine(to, "details.csv"), each.ToString());
        }

        return 0;
    }

    private static void Write(ImmutableArray<KindTally> kinds, string to)
    {
        File.WriteAllText(Path.Combine(to, "benches.csv"), BenchTables.Readings(kinds));
        File.WriteAllText(Path.Combine(to, "findings.csv"), BenchTables.Findings(kinds));
        File.WriteAllText(Path.Combine(to, "range.csv"), BenchTables.OverRange(kinds.Where(BenchTables.HasLadder)));
        File.WriteAllText(Path.Combine(to, "benches.md"), BenchDigest.Of(kinds));
    }

    private static KindTally Tally(string folder, StringBuilder each)
    {
        var watch = Stopwatch.StartNew();
        var tally = new KindTally(Path.GetFileName(folder));
        foreach (string campaign in Within(folder))
        {
            BenchCampaign judged = BenchCampaign.Of(campaign);
            tally.Add(judged);
            each.Append(BenchTables.Details(tally.Kind, judged));
        }

        string time = watch.Elapsed.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture);
        Console.Error.WriteLine($"{tally.Kind}: {tally.Campaigns} campaigns, {time} s");
        return tally;
    }

    private static IEnumerable<string> Within(string folder) => Directory.GetDirectories(folder).Order(StringComparer.Ordinal);
}
