using OxyPlot.Axes;
using SweepStats.Repeats;
using SweepStats.Report.Findings;
using SweepStats.Sweeps;

namespace SweepStats.Report.Drawing;

/// <summary>The axis below groups that stand side by side: their names where they fit, else names of lots, else none.</summary>
internal static class GroupAxis
{
    private const double PlotWidth = 790;
    private const double LabelSize = 13;
    private const double Apart = 12;
    private const double Edge = 1;

    // Names are cut until they fit; shorter than the last they say nothing.
    private static readonly int[] Lengths = [Frame.LongestName, 18, 12];

    /// <param name="groups">The groups from left to right.</param>
    /// <param name="places">Places of their sweeps.</param>
    public static LabelledAxis Of(ImmutableArray<RepeatGroup> groups, ImmutableArray<double[]> places)
    {
        double from = places[0][0] - Edge;
        double to = places[^1][^1] + Edge;
        return new LabelledAxis(AxisPosition.Bottom, Labels(groups, places, PlotWidth / (to - from)))
        {
            Minimum = from,
            Maximum = to,
            Title = FindingChartWords.SideBySide(groups.Length),
        };
    }

    private static List<PlaceLabel> Labels(ImmutableArray<RepeatGroup> groups, ImmutableArray<double[]> places, double scale)
    {
        foreach (int longest in Lengths)
        {
            List<PlaceLabel> names =
                [.. groups.Zip(places, (g, p) => new PlaceLabel(Middle(p[0], p[^1]), FindingChartWords.Group(g, longest)))];
            if (Fit(names, scale))
            {
                return names;
            }
        }

        // Floor and reference are known by their marks.
        List<PlaceLabel> lots =
        [
            .. groups.Zip(places).Where(p => p.First.Role == SweepRole.Covered)
                .GroupBy(p => FindingChartWords.Lot(p.First, Lengths[^1]))
                .Select(p => new PlaceLabel(Middle(p.First().Second[0], p.Last().Second[^1]), p.Key)),
        ];
        return Fit(lots, scale) ? lots : [];
    }

    private static bool Fit(List<PlaceLabel> labels, double scale)
    {
        var measurer = new TextMeasurer();
        double[] half = [.. labels.Select(l => measurer.MeasureText(l.Label, null, LabelSize, 400).Width / 2)];
        return labels.DistinctBy(l => l.Label).Count() == labels.Count
            && Enumerable.Range(1, labels.Count - 1)
                .All(i => (labels[i].Place - labels[i - 1].Place) * scale >= half[i] + half[i - 1] + Apart);
    }

    private static double Middle(double from, double to) => (from + to) / 2;
}
