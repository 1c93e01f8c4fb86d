using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Report.Drawing;
using SweepStats.Report.Lots;
using SweepStats.Report.Specimens;
using SweepStats.Statistics;
using SweepStats.Trends;

namespace SweepStats.Report.Trends;

/// <summary>
/// Specimens over an ordered factor, with the line and where it may lie: of the mean over the band, and at the frequency that
/// decides about the requirement.
/// </summary>
internal static class TrendChart
{
    private const int Steps = 80;

    /// <summary>The mean over the whole band; null where no part of it is clear.</summary>
    public static Chart? OfMean(FactorTrend trend, string name)
    {
        List<DataPoint> specimens =
            [.. trend.Specimens.Where(s => double.IsFinite(s.MeanDb)).Select(s => new DataPoint(s.Value, s.MeanDb))];
        if (specimens.Count == 0)
        {
            return null;
        }

        TrendLine? line = trend.Whole is { IsStraight: true, WithinLots: null } ? trend.Whole.Line : null;
        List<Slice> band = line is null ? [] : Band(trend, x => line.IntervalAt(x, trend.Confidence));
        string title = TrendChartWords.TrendMeanTitle(trend);
        IEnumerable<double> seen = [.. specimens.Select(p => p.Y), .. Edges(band)];
        PlotModel model = Model(trend, title, TrendChartWords.TrendMeanSubtitle(trend), seen).With([
            Shade(band, TrendChartWords.TrendBandLegend(trend)), Line(trend, line), Marks(specimens),
        ]);
        return new Chart(name, ChartKind.Trend, title, TrendChartWords.TrendMeanDescription(trend), model);
    }

    /// <summary>
    /// The frequency that decides about the requirement; null where nothing is asked, or no frequency asked about has a line.
    /// </summary>
    public static Chart? OfDeciding(FactorTrend trend, string name)
    {
        if (trend.Requirement is not { DecidedAt: { } decided } asked
            || Lined(trend, asked) is not { Line: { } line, Required: { } required } at)
        {
            return null;
        }

        List<DataPoint> specimens = [.. trend.Specimens.Zip(at.ValuesDb, (s, y) => new DataPoint(s.Value, y))];
        List<Slice> band = Band(trend, x => at.LimitsAt(x, asked.Rule.Level)!.Value);
        double guarded = required.Value + asked.Rule.GuardBand.Value;
        string title = TrendChartWords.TrendAtTitle(trend, at.At);
        PlotModel model = Model(trend, title, TrendChartWords.TrendAtSubtitle(trend, asked, at.At == decided),
            [.. specimens.Select(p => p.Y), .. Edges(band), required.Value, guarded]);
        IEnumerable<ChartSeries?> series =
        [
            Shade(band, TrendChartWords.TrendLimitsLegend(asked)),
            RequirementLine.Of(Level(trend, required.Value), TrendChartWords.TrendRequiredLegend(required)),
            asked.Rule.GuardBand.Value > 0 ? RequirementLine.Guarded(Level(trend, guarded), asked.Rule) : null,
            Line(trend, line), .. Ends(trend, asked, model), Marks(specimens),
        ];
        string description = TrendChartWords.TrendAtDescription(trend, asked, at.At);
        return new Chart(name, ChartKind.Trend, title, description, model.With(series));
    }

    // How far the requirement is met, and from where on it is not.
    private static IEnumerable<Trace?> Ends(FactorTrend trend, TrendRequirement asked, PlotModel model) =>
    [
        Upright(model, asked.MetUpTo, Ink.Lines[2],
            asked.MetUpTo is { } met ? TrendChartWords.MetUpToLegend(trend, met) : null),
        Upright(model, asked.NotMetFrom, Ink.Lines[1],
            asked.NotMetFrom is { } ends ? TrendChartWords.NotMetFromLegend(trend, ends) : null),
    ];

    private static PointMarks Marks(List<DataPoint> specimens) =>
        new() { Colour = Ink.Blue, Points = specimens, Marker = MarkerType.Diamond, Title = LotChartWords.SpecimenLegend };

    private static PlotModel Model(FactorTrend trend, string title, string subtitle, IEnumerable<double> seen) =>
        Frame.Model(title, subtitle,
            RoundScale.Axis(AxisPosition.Bottom, Frame.Literal(FactorWords.Factor(trend)), trend.Groups.Select(g => g.Value)),
            DecibelScale.Axis("Shielding (dB)", seen));

    // Where bounds decide there is no line to be drawn; of the frequencies with one, that with the least to spare at the end.
    private static TrendFrequency? Lined(FactorTrend trend, TrendRequirement asked)
    {
        TrendFrequency[] lined = [.. trend.Frequencies.Where(f => f is { Basis: TrendBasis.Line, Required: not null })];
        return Array.Find(lined, f => f.At == asked.DecidedAt)
            ?? lined.MinBy(f => f.LimitsAt(trend.Groups[^1].Value, asked.Rule.Level)!.Value.Low - f.Required!.Value.Value);
    }

    private static List<Slice> Band(FactorTrend trend, Func<double, Interval> limits)
    {
        (double first, double last) = (trend.Groups[0].Value, trend.Groups[^1].Value);
        return [.. Enumerable.Range(0, Steps + 1).Select(i =>
        {
            double x = first + ((last - first) * i / Steps);
            Interval at = limits(x);
            return new Slice(x, at.Low, at.High);
        })];
    }

    private static IEnumerable<double> Edges(List<Slice> band) => band.SelectMany(s => new[] { s.Low, s.High });

    private static IntervalBand? Shade(List<Slice> band, string legend) =>
        band.Count == 0 ? null : new IntervalBand { Colour = Ink.Blue, Slices = band, Title = legend };

    private static Trace? Line(FactorTrend trend, TrendLine? line) => line is null ? null
        : new Trace { Colour = Ink.Black, Points = Across(trend, line.At), Title = TrendChartWords.TrendLineLegend };

    private static List<DataPoint> Level(FactorTrend trend, double decibels) => Across(trend, _ => decibels);

    private static List<DataPoint> Across(FactorTrend trend, Func<double, double> decibels) =>
        [.. new[] { trend.Groups[0].Value, trend.Groups[^1].Value }.Select(x => new DataPoint(x, decibels(x)))];

    private static Trace? Upright(PlotModel model, double? value, Ink ink, string? legend) => value is not { } at ? null
        : new Trace
        {
            Colour = ink.Colour,
            Points = [new(at, model.Axes[1].Minimum), new(at, model.Axes[1].Maximum)],
            Dash = ink.Dash,
            Thickness = 1.4,
            Title = legend,
        };
}
