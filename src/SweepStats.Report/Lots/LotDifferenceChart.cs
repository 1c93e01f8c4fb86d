using OxyPlot;
using SweepStats.Lots;
using SweepStats.Report.Drawing;
using SweepStats.Report.History;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Report.Lots;

/// <summary>
/// How two lots of several campaigns differ at each frequency, with the interval of the difference; a gap where a specimen is
/// known from below only.
/// </summary>
internal static class LotDifferenceChart
{
    /// <summary>More pairs than this make a long page; the table has all.</summary>
    public const int Most = 4;

    private const double RoomAbove = 0.1;
    private const double LeastSpanDb = 2;

    // Intervals of two specimens reach far: the difference is to be seen beside them.
    private const double MostRoomDb = 5;

    /// <summary>A chart a pair, up to <see cref="Most"/>; none of a pair without a difference at any frequency.</summary>
    public static IEnumerable<Chart> All(LotHistory history, FileNames names) =>
        HistoryChartWords.PairsCharted(history, Most).Where(p => p.Points.Any(f => double.IsFinite(f.DifferenceDb)))
            .Select(pair => Of(history, pair, names.Next("difference", pair.First.Figures.Lot, pair.Second.Figures.Lot)));

    private static Chart Of(LotHistory history, HistoryPair pair, string name)
    {
        double[] hertz = [.. history.Frequencies.Select(f => f.Value)];
        List<DataPoint> difference = [.. pair.Points.Select((p, f) => new DataPoint(hertz[f], p.DifferenceDb))];
        List<Slice> intervals = Intervals(history, pair, hertz);
        string title = HistoryChartWords.DifferenceTitle(pair);
        PlotModel model = Frame.Model(
                title, HistoryChartWords.DifferenceSubtitle(history, pair), FrequencyScale.Axis(new FrequencyGrid([.. hertz])),
                DecibelScale.Axis(HistoryChartWords.DifferenceAxis, Seen(difference, intervals), RoomAbove, LeastSpanDb))
            .With([
                Band(intervals, HistoryChartWords.DifferenceInterval(history)),
                new Trace { Colour = Ink.Grey, Points = [.. hertz.Select(f => new DataPoint(f, 0))], Thickness = 1 },
                new Trace { Colour = Ink.Black, Points = difference, LoneDots = true,
                    Title = HistoryChartWords.DifferenceLegend },
                .. Bars(history, pair, hertz),
            ]);
        return new Chart(name, ChartKind.LotsOverFrequency, title, HistoryChartWords.DifferenceDescription(history, pair), model);
    }

    private static List<Slice> Intervals(LotHistory history, HistoryPair pair, double[] hertz) =>
        [.. pair.Points.Select((p, f) => Interval(hertz[f], p.Interval(history.Question.Confidence)))];

    private static Slice Interval(double hertz, Interval? found) =>
        found is { } i ? new Slice(hertz, i.Low, i.High) : new Slice(hertz, double.NaN, double.NaN);

    private static IntervalBand? Band(List<Slice> intervals, string title) =>
        intervals.Exists(i => double.IsFinite(i.Low))
            ? new IntervalBand { Colour = Ink.Blue, Slices = intervals, Title = title } : null;

    private static EdgeStretches[] Bars(LotHistory history, HistoryPair pair, double[] hertz) =>
    [
        new()
        {
            Colour = Ink.Red,
            Places = hertz,
            Marked = [.. pair.Points.Select(p => history.DifferAt(pair, p))],
            Title = HistoryChartWords.DifferLegend(history),
        },
        new()
        {
            Colour = Ink.Grey,
            Places = hertz,
            Marked = [.. pair.Points.Select(p => p.Hidden)],
            Title = HistoryChartWords.DifferenceHidden,
        },
    ];

    private static IEnumerable<double> Seen(List<DataPoint> difference, List<Slice> intervals)
    {
        double[] lines = [0, .. difference.Select(p => p.Y).Where(double.IsFinite)];
        double room = Math.Max(MostRoomDb, lines.Max() - lines.Min());
        double[] ends = [.. intervals.SelectMany(i => new[] { i.Low, i.High }).Where(double.IsFinite)];
        return [.. lines, .. ends.Select(e => Math.Clamp(e, lines.Min() - room, lines.Max() + room))];
    }
}
