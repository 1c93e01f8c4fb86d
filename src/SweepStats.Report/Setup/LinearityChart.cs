using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Linearity;
using SweepStats.Report.Drawing;
using SweepStats.Report.Findings;
using SweepStats.Statistics;

namespace SweepStats.Report.Setup;

/// <summary>
/// How far the receiver falls short of the source over its levels, the reference's own among them, and where it is 1 dB short.
/// </summary>
internal static class LinearityChart
{
    private const string Overload = "saturation-step";

    // Limits of two sweeps can be tens of dB wide: shown whole they would squeeze everything else.
    private const double TallestLimit = 2;

    /// <summary>The chart; null where no linearity sweeps can be compared.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        if (result.Linearity is not { } curve)
        {
            return null;
        }

        // An estimate past 1 dB that chance alone explains is no compression point: the check decides.
        double? compression = result.Findings.Any(f => f.Code == Overload) ? curve.CompressionDbm : null;
        Axis sources = Sources(curve), shortfalls = DecibelScale.Axis("Shortfall of the receiver (dB)", Seen(curve));
        PlotModel model = Frame.Model(FindingChartWords.LinearityTitle, FindingChartWords.LinearitySubtitle(curve, compression),
            sources, shortfalls).With([
            .. Levels(sources),
            curve.ReferenceDbm is { } source ? new EdgeMarks
            {
                Colour = Ink.Grey,
                Places = [source],
                FromTop = true,
                Title = FindingChartWords.ReferenceSource(source),
            } : null,
            .. Line(curve),
            .. Marks(curve, shortfalls),
            compression is { } at
                ? new CompressionMark { Colour = Ink.Red, SourceDbm = at, Title = FindingChartWords.CompressionAt(at) } : null,
        ]);
        return new Chart(name, ChartKind.Linearity, FindingChartWords.LinearityTitle,
            FindingChartWords.LinearityDescription(curve, compression), model)
        { Shows = [Overload] };
    }

    private static LinearAxis Sources(LinearityCurve curve) => DecibelScale.Axis("Source level (dBm)",
        curve.Steps.Select(s => s.HighDbm).Append(curve.LowestDbm)
            .Concat(curve.ReferenceDbm is { } reference ? [reference] : [])).AtBottom();

    private static Trace[] Levels(Axis sources) =>
    [
        new() { Colour = Ink.Black, Points = Frame.Across(sources, 0), Thickness = 1 },
        new()
        {
            Colour = Ink.Red,
            Points = Frame.Across(sources, LinearityCurve.CompressionDb),
            Dash = [12, 5],
            Thickness = 2,
            Title = FindingChartWords.CompressionLegend,
        },
    ];

    private static Trace[] Line(LinearityCurve curve)
    {
        DataPoint[] points = [new(curve.LowestDbm, 0), .. curve.Steps.Select(s => new DataPoint(s.HighDbm, s.ShortfallDb))];
        return
        [
            new() { Colour = Ink.Blue, Points = points, Thickness = 1.8 },
            new() { Colour = Ink.Blue, Points = points[..1], LoneDots = true, Hollow = true, Marker = MarkerType.Square },
        ];
    }

    private static ShortfallMarks[] Marks(LinearityCurve curve, Axis shortfalls)
    {
        ILookup<bool, LinearityStep> steps = curve.Steps.ToLookup(s => s.Interval is not null);
        bool cut = steps[true].Any(
            s => s.Interval!.Value.Low < shortfalls.Minimum || s.Interval.Value.High > shortfalls.Maximum);
        // Reference sweeps at a level of linearity sweeps are compared by themselves.
        LinearityStep[] apart = curve.StepsHoldReference || curve.Reference is not { } reference ? [] : [reference];
        return
        [
            new() { Colour = Ink.Blue, Steps = [.. steps[true]], Title = FindingChartWords.ShortfallLegend(curve, cut) },
            new() { Colour = Ink.Blue, Steps = [.. steps[false]], Title = FindingChartWords.SingleShortfallLegend },
            new() { Colour = Ink.Grey, Steps = apart, Title = FindingChartWords.ReferenceShortfallLegend },
        ];
    }

    private static IEnumerable<double> Seen(LinearityCurve curve)
    {
        double low = Math.Min(0, curve.All.Min(s => s.ShortfallDb)) - TallestLimit;
        double high = Math.Max(LinearityCurve.CompressionDb, curve.All.Max(s => s.ShortfallDb)) + TallestLimit;
        IEnumerable<double> limits = curve.All.Select(s => s.Interval).OfType<Interval>()
            .SelectMany(i => new[] { Math.Max(i.Low, low), Math.Min(i.High, high) });
        return [0, LinearityCurve.CompressionDb, .. curve.All.Select(s => s.ShortfallDb), .. limits];
    }
}
