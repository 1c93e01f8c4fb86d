using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using SweepStats.StudyRuns.Trust;

namespace SweepStats.Studies.Trust;

/// <summary>The study on one page: tables and charts.</summary>
internal static class TrustDigest
{
    // Notes that say what is so: what the campaign could not know, and the placements that do differ by 0.2 dB. No alarm.
    private static readonly string[] ByDesign =
        ["averaging-unknown", "near-floor", "placement-unknown", "linearity-untested", "placement-effect"];

    public static void Write(string folder)
    {
        ImmutableArray<AlarmRow> alarms = AlarmTable.Read(folder);
        ImmutableArray<DetectionRow> detection = DetectionTable.Read(folder);
        string text =
            $"## False alarms\n\n{ByCell(alarms)}\n{ByCode(alarms)}\n## Faults found\n\n{Goals(detection)}\n{BySize(detection)}";
        File.WriteAllText(Path.Combine(folder, "trust.md"), text);
        foreach (DetectionChart chart in DetectionChart.All)
        {
            if (chart.Of(detection) is { } drawing)
            {
                File.WriteAllText(Path.Combine(folder, chart.FileName), drawing);
            }
        }
    }

    private static string ByCell(ImmutableArray<AlarmRow> all)
    {
        var text = new StringBuilder("| averaging drawn, stated | looks | sweeps of each role | specimens | campaigns | any "
            + "warning or fault (95 % limits) |\n|---|---|---|---|---|---|\n");
        foreach (AlarmRow row in all.Where(r => r.Code == AlarmRow.Any))
        {
            CleanCell c = row.Cell;
            text.Append(string.Create(CultureInfo.InvariantCulture,
                $"| {c.Drawn}, {c.Stated} | {c.Looks} | {c.Sweeps} | {c.Specimens} | {row.Campaigns} | "
                    + $"{new Share(row.Warned, row.Campaigns).WithLimits} |\n").ToLowerInvariant());
        }

        Share together = Sum(all.Where(r => r.Code == AlarmRow.Any && r.Cell.Specimens == 1), r => r.Warned);
        return text.Append(CultureInfo.InvariantCulture,
            $"| all of one specimen | | | 1 | {together.Of} | {together.WithLimits} |\n").ToString();
    }

    private static string ByCode(ImmutableArray<AlarmRow> all)
    {
        var text = new StringBuilder("| check | warning or fault, one specimen | worst cell | note | warning or fault, nine "
            + "specimens |\n|---|---|---|---|---|\n");
        foreach (var group in all.Where(r => r.Code != AlarmRow.Any).GroupBy(r => r.Code))
        {
            AlarmRow[] single = [.. group.Where(r => r.Cell.Specimens == 1)];
            AlarmRow worst = single.MaxBy(r => new Share(r.Warned, r.Campaigns).Value)!;
            string where = worst.Warned == 0 ? "" : string.Create(CultureInfo.InvariantCulture,
                $"{new Share(worst.Warned, worst.Campaigns).Percent} ({worst.Cell.Drawn}, {worst.Cell.Stated}, "
                    + $"{worst.Cell.Sweeps} sweeps)").ToLowerInvariant();
            Share noted = Sum(single, r => r.Noted);
            string note = noted.Count == 0 ? "" : noted.Percent + (ByDesign.Contains(group.Key) ? ", by design" : "");
            text.Append(CultureInfo.InvariantCulture, $"| {group.Key} | {Sum(single, r => r.Warned).WithLimits} | {where} | "
                + $"{note} | {Sum(group.Where(r => r.Cell.Specimens > 1), r => r.Warned).Percent} |\n");
        }

        return text.ToString();
    }

    private static string Goals(ImmutableArray<DetectionRow> all)
    {
        var text = new StringBuilder(
            "| to be found in at least 95 % | fault as drawn | found (95 % limits) | |\n|---|---|---|---|\n");
        foreach ((Goal goal, DetectionRow row) in Goal.All.SelectMany(goal => all.Where(goal.Covers).Select(row => (goal, row))))
        {
            text.Append(CultureInfo.InvariantCulture, $"| {goal.Says} | {row.Name} | "
                + $"{new Share(row.Found, row.Campaigns).WithLimits} | {(row.Share >= Goal.Least ? "met" : "missed")} |\n");
        }

        return text.ToString();
    }

    private static string BySize(ImmutableArray<DetectionRow> all)
    {
        var text = new StringBuilder("| check | fault | size: share of campaigns in which it is found |\n|---|---|---|\n");
        foreach (var group in all.GroupBy(r => (r.Code, r.Name, r.Unit)))
        {
            IEnumerable<string> sizes =
                group.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Size:0.##}: {100 * r.Share:0}"));
            string notes = group.Any(r => r.Found > 0) && group.All(r => r.Warned == 0) ? ", as a note" : "";
            text.Append(CultureInfo.InvariantCulture,
                $"| {group.Key.Code} | {group.Key.Name} ({group.Key.Unit}){notes} | {string.Join(" · ", sizes)} % |\n");
        }

        return text.ToString();
    }

    private static Share Sum(IEnumerable<AlarmRow> rows, Func<AlarmRow, int> count) =>
        new(rows.Sum(count), rows.Sum(r => r.Campaigns));
}
