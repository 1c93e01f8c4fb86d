using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;
using SweepStats.Trends;

namespace SweepStats.Report.Trends;

/// <summary>
/// How much the shielding changes for each unit of an ordered factor, over frequency; a gap where some specimen is known from
/// below only, or no straight line holds.
/// </summary>
internal static class TrendSlopeChart
{
    /// <summary>The chart; null where no frequency has a slope, or the mean over the band follows no straight line.</summary>
    public static Chart? Of(AnalysisResult result, FactorTrend trend, string name)
    {
        TrendLine?[] lines = [.. trend.Frequencies.Select(f => f.StraightAdjusted <= 1 - trend.Confidence.Level ? null : f.Line)];
        if (!trend.Whole.IsStraight || Array.TrueForAll(lines, l => l is null))
        {
            return null;
        }

        List<DataPoint> slopes = Points(trend, lines, line => line.SlopeDb);
        IntervalBand band = Band(trend, lines);
        string title = TrendChartWords.TrendSlopeTitle(trend);
        PlotModel model = Frame.Model(
                title, TrendChartWords.TrendSlopeSubtitle(trend, lines.Contains(null)), FrequencyScale.Axis(result.Campaign.Grid),
                RoundScale.Axis(AxisPosition.Left, TrendChartWords.TrendSlopeAxis(trend),
                    [0, .. band.Slices.SelectMany(s => new[] { s.Low, s.High })]))
            .With(band, NoChange(slopes),
                new Trace { Colour = Ink.Black, Points = slopes, LoneDots = true, Title = TrendChartWords.SlopeLegend });
        return new Chart(name, ChartKind.Trend, title, TrendChartWords.TrendSlopeDescription(trend), model);
    }

    private static IntervalBand Band(FactorTrend trend, TrendLine?[] lines) => new()
    {
        Colour = Ink.Blue,
        Slices = [.. Points(trend, lines, line => line.SlopeIntervalDb.Low)
            .Zip(Points(trend, lines, line => line.SlopeIntervalDb.High), (low, high) => new Slice(low.X, low.Y, high.Y))],
        Title = $"{Printed.Level(trend.Confidence)} interval",
    };

    private static List<DataPoint> Points(FactorTrend trend, TrendLine?[] lines, Func<TrendLine, double> of) =>
        [.. trend.Frequencies.Zip(lines, (f, line) => new DataPoint(f.At.Value, line is null ? double.NaN : of(line)))];

    private static Trace NoChange(List<DataPoint> slopes) => new()
    {
        Colour = Ink.Grey,
        Points = [.. slopes.Select(p => new DataPoint(p.X, 0))],
        Thickness = 1,
        Dash = [3, 3],
        Title = TrendChartWords.NoChangeLegend,
    };
}
