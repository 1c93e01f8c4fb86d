using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using SweepStats.StudyRuns;
using SweepStats.StudyRuns.Lots;

namespace SweepStats.Studies.Specimens;

/// <summary>lots: comparisons of lots whose truth is known, as tables on the console.</summary>
internal static class LotTables
{
    private const ulong Seed = 700_000;

    // Far from the draws of the other rows.
    private const ulong Unequal = 10_000_000;

    public static int Print(int campaigns)
    {
        var watch = Stopwatch.StartNew();
        Alike("alike lots", LotSizeStudy.Cells, (campaigns, Seed));
        Alike("alike lots that scatter unequally", LotSizeStudy.UnequalCells, (campaigns, Seed + Unequal));
        Off(Math.Max(1, campaigns / 3));
        Intervals(campaigns);
        Same(campaigns);
        History(campaigns);
        Tolerance(campaigns);
        Console.Error.WriteLine($"{watch.Elapsed.TotalSeconds:0} s");
        return 0;
    }

    public static int PrintUnequal(int campaigns)
    {
        Alike("alike lots that scatter unequally", LotSizeStudy.UnequalCells, (campaigns, Seed + Unequal));
        return 0;
    }

    private static void Alike(string title, ImmutableArray<LotCell> cells, (int Campaigns, ulong Seed) draws)
    {
        Heading(title, "specimens of the lots | specimens differ by | of the lots, times | placements | capped readings | band "
            + "| curves | curves, lots taken to scatter alike | single frequencies | some frequency, adjusted");
        for (int i = 0; i < cells.Length; i++)
        {
            // Rows have draws of their own, so that they can be taken together.
            LotCell cell = cells[i];
            LotSizeRow row = LotSizeStudy.Run(cell, draws.Campaigns, draws.Seed + ((ulong)i * 100_000));
            Line($"| {Specimens(cell)} | {Differ(cell)} | {string.Join(", ", cell.Spreads)} | {Placements(cell.Placements,
                cell.PlacementDb)} | {Percent(row.Capped)} | {Share(row.Band)} | {Share(row.Curves)} | {Percent(
                    row.Equal)} | {Percent(row.Frequencies)} | {Share(row.Adjusted)} |");
        }
    }

    private static void Off(int campaigns)
    {
        Heading("one of three lots of four off",
            "where | capped | by standard deviations | band | some stretch | names the right lot | names another");
        foreach (Capping capping in Enum.GetValues<Capping>())
        {
            foreach (OffWhere where in Enum.GetValues<OffWhere>())
            {
                foreach (double size in LotPowerStudy.Sizes)
                {
                    LotPowerRow row = LotPowerStudy.Run(capping, where, size, new(campaigns, Seed));
                    Line($"| {row.Where} | {row.Capping} | {size} | {Share(row.Band)} | {Percent(row.Stretch)} | {Share(
                        row.Right)} | {Share(row.Wrong)} |");
                }
            }
        }
    }

    private static void Intervals(int campaigns)
    {
        Heading("intervals and promises of lots", "specimens | specimens differ by | reference sweeps | that differ by | "
            + "interval of the mean holds | by specimens alone | promise over the truth | by specimens alone | promise of a "
            + "frequency over it");
        foreach (LotIntervalCell cell in LotIntervalStudy.Cells)
        {
            LotIntervalRow row = LotIntervalStudy.Run(cell, campaigns, Seed);
            Line($"| {cell.Specimens} | {cell.SpecimenDb} dB | {cell.References} | {cell.SweepDb} dB | {Share(
                row.Mean)} | {Percent(row.Alone)} | {Share(row.Broken)} | {Percent(row.BrokenAlone)} | {Percent(
                    row.PointBroken)} |");
        }
    }

    private static void Same(int campaigns)
    {
        Heading("the same within 1 dB", "specimens of the lots | specimens differ by | capped | apart | said to be the same");
        foreach ((LotCell cell, double apart) in SameWithinMarginStudy.Cells)
        {
            Tally same = SameWithinMarginStudy.Run(cell, apart, new(campaigns, Seed)).Same;
            Line($"| {Specimens(cell)} | {Differ(cell)} | {cell.Capping} | {apart} dB | {Share(same)} |");
        }
    }

    public static int PrintHistory(int campaigns)
    {
        History(campaigns);
        return 0;
    }

    private static void History(int campaigns)
    {
        Heading("two campaigns of alike lots", "lots × specimens of each | specimens differ by | reference sweeps | sweeps "
            + "differ by | references beside that | range lost by the second | stated errors | some pair, adjusted | single "
            + "pairs, means | the same without the references' errors | pairs at some frequency, adjusted | single frequencies");
        foreach (HistoryCell cell in LotHistoryStudy.Cells)
        {
            HistoryRow row = LotHistoryStudy.Run(cell, campaigns, Seed);
            Line($"| {cell.Lots} × {cell.Specimens} | {cell.SpecimenDb} dB, {cell.FrequencyDb} dB at each frequency | ",
                $"{cell.References} | {cell.SweepDb} dB | {cell.Reference.OffsetDb} dB, ripple {cell.Reference.RippleDb} dB | ",
                $"{cell.LessRangeDb} dB | {cell.Errors.Length} | {Share(row.Any)} | {Share(row.Between)} | ",
                $"{Percent(row.Ignored)} | {Percent(row.Somewhere)} | {Percent(row.Frequencies)} |");
        }
    }

    private static void Tolerance(int campaigns)
    {
        Heading("limits for 95 % of the specimens",
            "specimens | limit of | placements | capped readings | over the truth | stated");
        foreach (ToleranceCell cell in ToleranceStudy.Cells)
        {
            // Each campaign gives a limit for every frequency.
            ToleranceRow row = ToleranceStudy.Run(cell, cell.ByFrequency ? Math.Max(1, campaigns / 5) : campaigns, Seed);
            Line($"| {cell.Specimens} | {(cell.ByFrequency ? "each frequency" : "the band's mean")} | {Placements(cell.Placements,
                cell.PlacementDb)} | {Percent(row.Capped)} | {Share(row.Broken)} | {Percent(row.Stated)} |");
        }
    }

    internal static void Heading(string title, string columns)
    {
        Console.WriteLine($"\n{title}\n\n| {columns} |\n|{string.Concat(columns.Split('|').Select(_ => "---|"))}");
    }

    internal static void Line(params FormattableString[] parts) =>
        Console.WriteLine(string.Concat(parts.Select(FormattableString.Invariant)));

    internal static string Share(Tally tally) =>
        tally.Of == 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{100 * tally.Share:0.0} % of {tally.Of}");

    internal static string Percent(Tally tally) =>
        tally.Of == 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{100 * tally.Share:0.0} %");

    private static string Specimens(LotCell cell) => string.Join(", ", cell.Specimens);

    private static string Differ(LotCell cell) =>
        string.Create(CultureInfo.InvariantCulture, $"{cell.SpecimenDb} dB, {cell.FrequencyDb} dB");

    private static string Placements(int count, double db) =>
        count == 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{count}, {db} dB apart");
}
