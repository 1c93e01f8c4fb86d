using SweepStats.Checks;

namespace SweepStats.Studies.Benches;

/// <summary>The tallies on one page.</summary>
internal static class BenchDigest
{
    private const string Drawn =
        "Campaigns are drawn by the R scripts in `fixtures/oracles/benches`, which share nothing with the program. "
        + "Held: the truth lies inside the interval, or at or over the bound; in brackets the binomial 95 % limits, "
        + "which take readings for independent, and the standard error by how campaigns differ. "
        + "Shares of readings over and under the truth are of claims.";

    private static readonly int[] RangeBins = [-3, -2, -1, 0, 1, 2, 3, 4, 6, 8];

    public static string Of(IReadOnlyCollection<KindTally> kinds) => string.Join("\n\n", [
        "# Benches where the model does not hold", Drawn,
        "## Intervals", Intervals(kinds).Text,
        "## Trust and findings", Found(kinds).Text,
        "## Verdicts", Verdicts(kinds).Text,
        "## Around the reported range", Range(kinds).Text]) + "\n";

    private static PageTable Intervals(IEnumerable<KindTally> kinds)
    {
        var table = new PageTable(
            "kind", "range", "campaigns (refused)", "readings", "nothing claimed", "two-sided", "held",
            "lower end over the truth", "upper end under the truth", "width, median", "held where called trustworthy");
        foreach (KindTally kind in kinds)
        {
            foreach ((string part, ReadingTally tally) in kind.Parts)
            {
                table.Add([kind.Kind, part, $"{kind.Campaigns} ({kind.Refused})", .. Cells(tally)]);
            }
        }

        return table;
    }

    private static string[] Cells(ReadingTally t) =>
    [
        $"{t.Readings}", BenchFigures.Share(t.Nothing, t.Readings), BenchFigures.Share(t.TwoSided, t.Readings), Held(t),
        BenchFigures.Share(t.LowOver, t.Held.Of), BenchFigures.Share(t.HighUnder, t.Held.Of),
        double.IsNaN(t.MedianWidthDb) ? "" : BenchFigures.Number(t.MedianWidthDb) + " dB",
        BenchFigures.Share(t.TrustedHeld, t.TrustedClaims),
    ];

    private static string Held(ReadingTally t)
    {
        string error = double.IsNaN(t.HeldErrorPercent) ? "" : $" ± {BenchFigures.Number(t.HeldErrorPercent)}";
        return t.Held.Of == 0 ? "" : $"{t.Held.WithLimits}{error}, {t.Held.Count} of {t.Held.Of}";
    }

    private static PageTable Found(IEnumerable<KindTally> kinds)
    {
        var table = new PageTable("kind", "trustworthy", "limited", "untrustworthy", "warnings and faults: share of campaigns");
        foreach (KindTally kind in kinds)
        {
            int read = kind.Campaigns - kind.Refused;
            IEnumerable<string> said = Enum.GetValues<SweepStats.Verdicts.Trust>()
                .Select(t => BenchFigures.Share(kind.CountOf(t), read));
            IEnumerable<string> refused = kind.Refusal is null ? [] : ["refused: " + kind.Refusal];
            string Word(FoundCode found) => found.Severity == Severity.Fault ? found.Code + " (fault)" : found.Code;
            IEnumerable<string> codes = kind.Found.Where(f => f.Key.Severity > Severity.Note)
                .Select(f => $"{Word(f.Key)} {BenchFigures.Share(f.Value, read)}");
            table.Add([kind.Kind, .. said, string.Join("; ", refused.Concat(codes))]);
        }

        return table;
    }

    private static PageTable Verdicts(IEnumerable<KindTally> kinds)
    {
        var table = new PageTable(
            "kind", "specimens asked about", "said to meet, and do not", "said to fail, and do not",
            "readings: false \"meets\" of those that do not conform", "false \"fails\" of those that conform");
        foreach (KindTally kind in kinds.Where(k => k.Asked > 0))
        {
            ReadingTally t = kind.Total;
            table.Add([
                kind.Kind, $"{kind.Asked}", $"{kind.FalseMeets}", $"{kind.FalseFails}",
                $"{t.FalseMeets} of {t.NotConforming}", $"{t.FalseFails} of {t.Conforming}"]);
        }

        return table;
    }

    private static PageTable Range(IEnumerable<KindTally> kinds)
    {
        var table = new PageTable(["two-sided where truth less reported range is", .. RangeBins.Select(b => $"{b} dB")]);
        foreach (KindTally kind in kinds.Where(BenchTables.HasLadder))
        {
            Dictionary<int, ReadingTally> bins = kind.OverRange.ToDictionary();
            string Cell(int bin) => bins.TryGetValue(bin, out ReadingTally? t) ? BenchFigures.Share(t.TwoSided, t.Readings) : "";
            table.Add([kind.Kind, .. RangeBins.Select(Cell)]);
        }

        return table;
    }
}
