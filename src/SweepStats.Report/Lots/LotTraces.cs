using OxyPlot;
using SweepStats.Lots;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Lots;

/// <summary>Lots as lines over frequency: at most as many as can be told apart.</summary>
internal static class LotTraces
{
    /// <summary>More lines than this cannot be told apart.</summary>
    public const int Most = OverviewChart.Most;

    /// <summary>The lots with the largest of a figure, in the order of the lots; one that is not a number comes last.</summary>
    public static int[] Foremost(int lots, Func<int, double> figure) =>
        [.. Enumerable.Range(0, lots).OrderByDescending(l => double.IsFinite(figure(l)) ? figure(l) : double.NegativeInfinity)
            .Take(Most).Order()];

    /// <summary>A value of one lot at each frequency; not a number where there is none.</summary>
    public static List<DataPoint> Points(ImmutableArray<LotFrequency> frequencies, Func<LotFrequency, double?> value) =>
        [.. frequencies.Select(f => new DataPoint(f.At.Value, value(f) ?? double.NaN))];

    /// <summary>Whether there is anything to draw: one point with a number.</summary>
    public static bool Any(IEnumerable<DataPoint> points) => points.Any(p => double.IsFinite(p.Y));
}
