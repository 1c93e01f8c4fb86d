using OxyPlot;
using SweepStats.Lots;
using SweepStats.Report.Lots;
using SweepStats.Report.Pages;
using SweepStats.Report.Text;

namespace SweepStats.Report.Sheets;

/// <summary>How far each lot lies above or below the mean of all lots over frequency, named where its line ends.</summary>
internal static class LotsPicture
{
    private const double Width = 440;
    private const double Height = 250;
    private const double RoomForNames = 76;
    private const double LineOfText = 14;
    private const int LongestName = 10;
    private const int MostPoints = 400;

    /// <summary>More names than this do not find room beside their lines.</summary>
    public const int Most = 6;

    /// <summary>Whether there is anything to draw: two lots, and a frequency at which all of them have a value.</summary>
    public static bool Shows(AnalysisResult result) =>
        result.Lots.Lots.Length > 1 && result.Lots.Frequencies.Any(f => f.Lots.All(l => !l.Bound && double.IsFinite(l.MeanDb)));

    /// <summary>Draws a line a lot; those farthest from the mean have a name and a line of their own kind.</summary>
    public static void Write(HtmlWriter html, AnalysisResult result)
    {
        LotComparison lots = result.Lots;
        DataPoint[][] apart = Apart(lots);
        int[] named = Foremost(apart);
        IEnumerable<double> seen = apart.SelectMany(l => l).Select(p => p.Y).Append(-1).Append(1);
        var space = new PlotSpace(Width, Height, result.Campaign.Grid, seen, RoomForNames);
        var plot = new Plot(html, space, LotChartWords.LotFrequencyDescription(lots, lots.Frequencies.Count(lots.DifferAt)));
        plot.Axes("dB above the mean of all lots");
        plot.Line("zero", [new DataPoint(lots.Frequencies[0].At.Value, 0), new DataPoint(lots.Frequencies[^1].At.Value, 0)]);
        for (int l = 0; l < apart.Length; l++)
        {
            int place = Array.IndexOf(named, l);
            plot.Line(place < 0 ? "other" : $"lot lot-{place}", apart[l]);
        }

        Names(plot, lots, apart, named);
        plot.End();
    }

    private static DataPoint[][] Apart(LotComparison lots)
    {
        // Of neighbours that the picture cannot tell apart the one where the lots differ most.
        int[] places = Thinning.Places(lots.Frequencies.Length, MostPoints,
            f => -Enumerable.Range(0, lots.Lots.Length).Max(l => Math.Abs(Apart(lots.Frequencies[f], l))));
        return
        [
            .. lots.Lots.Select((_, l) =>
                places.Select(f => new DataPoint(lots.Frequencies[f].At.Value, Apart(lots.Frequencies[f], l))).ToArray()),
        ];
    }

    // Among bounds the order of lots is that of chance: there is no line there.
    private static double Apart(LotFrequency at, int lot) =>
        at.Lots.Any(l => l.Bound) ? double.NaN : at.Lots[lot].MeanDb - at.Lots.Average(l => l.MeanDb);

    private static int[] Foremost(DataPoint[][] apart) =>
    [
        .. Enumerable.Range(0, apart.Length)
            .OrderByDescending(l => apart[l].Select(p => Math.Abs(p.Y)).Where(double.IsFinite).DefaultIfEmpty(0).Average())
            .Take(Most).Order(),
    ];

    // At the height where their lines end, moved apart so that none covers another.
    private static void Names(Plot plot, LotComparison lots, DataPoint[][] apart, int[] named)
    {
        IReadOnlyList<string> names = ShortNames.Of([.. named.Select(l => lots.Lots[l])], LongestName);
        (int Name, double Y)[] ends = [.. Ends(plot.Space, apart, named).OrderBy(e => e.Y)];
        double free = plot.Space.Top, right = plot.Space.Right;
        for (int i = 0; i < ends.Length; i++)
        {
            double highest = plot.Space.Bottom - ((ends.Length - 1 - i) * LineOfText);
            double y = Math.Min(Math.Max(ends[i].Y + 4, free), Math.Max(highest, free));
            plot.Stroke($"lot lot-{ends[i].Name}", new(right + 4, y - 4), new(right + 22, y - 4));
            plot.Text(names[ends[i].Name], right + 26, y, "start");
            free = y + LineOfText;
        }
    }

    private static IEnumerable<(int Name, double Y)> Ends(PlotSpace space, DataPoint[][] apart, int[] named) =>
        from i in Enumerable.Range(0, named.Length)
        where apart[named[i]].Any(p => double.IsFinite(p.Y))
        select (i, space.Y(apart[named[i]].Last(p => double.IsFinite(p.Y)).Y));
}
