using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Lots;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Lots;

/// <summary>
/// How far each lot lies above or below the mean of all lots at each frequency, and where they differ by more than chance.
/// </summary>
/// <remarks>
/// Where only bounds are known they stand in for what is hidden, in that mean too. So it is a known level, a line against it is
/// exact, and an arrow that stands on a bound says rightly that the lot lies there or higher.
/// </remarks>
internal static class LotFrequencyChart
{
    private const double LeastSpanDb = 1;

    // Thin lines have no markers along them, only lone points do.
    private const double Never = double.MaxValue;

    /// <summary>The chart; null for a single lot, and where nothing is known of any.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        LotComparison lots = result.Lots;
        List<DataPoint>[] apart = Apart(lots);
        if (lots.Lots.Length < 2 || !apart.Any(LotTraces.Any))
        {
            return null;
        }

        int[] shown = Farthest(apart);
        EdgeStretches differ = Differing(lots);
        bool bounds = lots.Frequencies.Any(f => f.Lots.Any(l => l.Bound));
        PlotModel model = Frame.Model(
                LotChartWords.LotFrequencyTitle, LotChartWords.LotFrequencySubtitle(shown.Length, lots.Lots.Length, bounds),
            FrequencyScale.Axis(result.Campaign.Grid), Differences(apart, bounds))
            .With([
                .. Others(lots, apart, shown),
                new Trace { Colour = Ink.Grey, Points = LotTraces.Points(lots.Frequencies, _ => 0), Thickness = 1 },
                .. shown.SelectMany((l, i) => Lines(lots, l, apart[l], new(i, shown.Length))),
                differ,
            ]);
        return new Chart(name, ChartKind.LotsOverFrequency, LotChartWords.LotFrequencyTitle,
            LotChartWords.LotFrequencyDescription(lots, differ.Marked.Count(d => d)), model);
    }

    private static List<DataPoint>[] Apart(LotComparison lots) =>
        [.. lots.Lots.Select(
            (_, l) => LotTraces.Points(lots.Frequencies, f => f.Lots[l].MeanDb - f.Lots.Average(o => o.MeanDb)))];

    private static int[] Farthest(List<DataPoint>[] apart) => LotTraces.Foremost(apart.Length,
        l => apart[l].Where(p => double.IsFinite(p.Y)).Select(p => Math.Abs(p.Y)).DefaultIfEmpty(0).Average());

    private static EdgeStretches Differing(LotComparison lots) => new()
    {
        Colour = Ink.Red,
        Places = [.. lots.Frequencies.Select(f => f.At.Value)],
        Marked = [.. lots.Frequencies.Select(lots.DifferAt)],
        Title = LotChartWords.LotsDifferLegend(lots.Question),
    };

    private static LinearAxis Differences(List<DataPoint>[] apart, bool bounds) => DecibelScale.Axis(
        "Difference from the mean of all lots (dB)", apart.SelectMany(l => l).Select(p => p.Y), bounds ? 0.16 : 0.08,
        LeastSpanDb);

    // Faint and without a name, so that a reader sees what is usual.
    private static IEnumerable<Trace> Others(LotComparison lots, List<DataPoint>[] apart, int[] shown) =>
        Enumerable.Range(0, lots.Lots.Length).Except(shown).Select((l, i) => new Trace
        {
            Colour = Ink.Veil(Ink.Grey, 80),
            Points = Kept(lots, apart[l], at => !at.Lots[l].Bound),
            Thickness = 0.9,
            LoneDots = true,
            Title = i == 0 ? LotChartWords.OtherLotsLegend : null,
        });

    private static IEnumerable<ChartSeries> Lines(LotComparison lots, int lot, List<DataPoint> apart, OneOfSeveral among)
    {
        string title = Frame.Names(lots.Lots)[lot];
        List<DataPoint> clear = Kept(lots, apart, at => !at.Lots.Any(l => l.Bound));
        List<DataPoint> amidBounds = Kept(lots, apart, at => at.Lots.Any(l => l.Bound) && !at.Lots[lot].Bound);
        List<DataPoint> bounds = [.. Kept(lots, apart, at => at.Lots[lot].Bound).Where(p => double.IsFinite(p.Y))];
        bool hasLine = LotTraces.Any(clear), hasThin = LotTraces.Any(amidBounds);
        if (hasLine)
        {
            yield return among.Line(clear, title, bounds.Count > 0);
        }

        if (hasThin)
        {
            yield return Thin(amidBounds, among, hasLine ? null : title, bounds.Count > 0);
        }

        yield return among.Arrows(bounds, hasLine || hasThin ? null : LotChartWords.BoundOnlyLegend(title));
    }

    private static Trace Thin(List<DataPoint> points, OneOfSeveral among, string? title, bool arrows) => new()
    {
        Colour = Ink.Veil(among.Ink.Colour, 170),
        Points = points,
        Thickness = 0.9,
        LoneDots = true,
        Hollow = true,
        Marker = among.Ink.Marker,
        MarkerStart = Never,
        Title = title,
        ArrowStyle = arrows ? among.Place : null,
    };

    private static List<DataPoint> Kept(LotComparison lots, List<DataPoint> apart, Func<LotFrequency, bool> keep) =>
        [.. apart.Select((p, f) => keep(lots.Frequencies[f]) ? p : new DataPoint(p.X, double.NaN))];
}
