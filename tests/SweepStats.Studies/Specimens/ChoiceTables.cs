using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using SweepStats.StudyRuns;
using SweepStats.StudyRuns.Choice;

namespace SweepStats.Studies.Specimens;

/// <summary>choice: choices among specimens whose truth is known, as tables on the console.</summary>
internal static class ChoiceTables
{
    private const ulong Seed = 800_000;

    private static readonly ChoiceCell Wide = new("", 9, 3, 3) { PlacementDb = 1.5 };

    public static int Print(int campaigns)
    {
        var watch = Stopwatch.StartNew();
        Repeats(10 * campaigns);
        Campaigns(campaigns);
        Calibration(2 * campaigns);
        Console.Error.WriteLine($"{watch.Elapsed.TotalSeconds:0} s");
        return 0;
    }

    private static void Repeats(int sets)
    {
        LotTables.Heading("repeats drawn by themselves",
            "candidates | repeats | spread | the best scatters | usual scatter | own | the larger");
        foreach (RepeatsCell cell in BestCandidatesStudy.Cells)
        {
            IEnumerable<string> rows = BestCandidatesStudy.Run(cell, sets, Seed)
                .Select(r => string.Create(CultureInfo.InvariantCulture, $"{LotTables.Percent(r.Held)}, {r.MedianSize:0}"));
            LotTables.Line(
                $"| {cell.Candidates} | {cell.Repeats} | {cell.Spread} | × {cell.BestScatters} | {string.Join(" | ", rows)} |");
        }
    }

    private static void Campaigns(int campaigns)
    {
        LotTables.Heading("campaigns", "campaigns | candidates | placements | spread | compared | best of that part in the set "
            + "| best of the whole band in the set | set, median | one alone | highest plain mean is the best");
        foreach (ChoiceCell cell in ChoiceCell.Cells)
        {
            ChoiceRow row = ChoiceStudy.Run(cell, campaigns, Seed);
            LotTables.Line(
                $"| {cell.Name} | {cell.Candidates} | {cell.Placements} | {cell.SpreadDb} dB | {100 * row.ComparedShare:0} % | ",
                $"{LotTables.Share(row.Held)} | {LotTables.Percent(row.HeldWhole)} | {row.MedianSize:0.#} | ",
                $"{LotTables.Percent(row.Alone)} | {LotTables.Percent(row.Named)} |");
        }
    }

    private static void Calibration(int campaigns)
    {
        LotTables.Heading("probability of being the best", "probability | mean | truly the best");
        ImmutableArray<(double Stated, Tally Best)> classes = ChoiceStudy.Calibrated(Wide, campaigns, Seed);
        for (int i = 0; i < classes.Length; i++)
        {
            LotTables.Line(
                $"| {100 * ChoiceStudy.Edges[i]:0} to {100 * ChoiceStudy.Edges[i + 1]:0} % | {100 * classes[i].Stated:0.0} % | ",
                $"{LotTables.Share(classes[i].Best)} |");
        }
    }
}
