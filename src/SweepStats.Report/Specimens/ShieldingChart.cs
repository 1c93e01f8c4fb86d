using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;
using SweepStats.Shielding;

namespace SweepStats.Report.Specimens;

/// <summary>Shielding of one specimen: estimate with interval, arrows where only a bound is known.</summary>
internal static class ShieldingChart
{
    /// <summary>The chart of a specimen; its file bears the name.</summary>
    public static Chart Of(AnalysisResult result, ShieldingCurve curve, string name)
    {
        var points = new CurvePoints(curve);
        AskedLines asked = AskedLines.Of(result);
        string title = SpecimenChartWords.ShieldingTitle(Frame.Name(curve.Name.ToString()));
        PlotModel model = Frame.Model(title, SpecimenChartWords.ShieldingSubtitle(curve, result.Floor is not null),
                FrequencyScale.Axis(result.Campaign.Grid),
            DecibelScale.Axis("Shielding (dB)", points.Seen.Concat(asked.Seen), points.Bounds.Count > 0 ? 0.16 : 0.06))
            .With(points.HasEstimates ? Band(points, result) : null, asked.Required, asked.Guarded,
                points.HasEstimates
                    ? new Trace { Colour = Ink.Black, Points = points.Estimate, LoneDots = true, Title = "estimate" } : null,
                points.HasUnrepeated ? Unrepeated(points) : null,
                new OpenBounds { Colour = Ink.Black, Bounds = points.Bounds, Title = SpecimenChartWords.ArrowLegend },
                new EdgeMarks
                {
                    Colour = Ink.Red,
                    Places = points.Unreadable,
                    FromTop = false,
                    Title = SpecimenChartWords.UnreadableLegend,
                });
        return new Chart(name, ChartKind.Shielding, title,
            SpecimenChartWords.ShieldingDescription(curve, result.Bands.FirstOrDefault(b => b.Name == curve.Name)), model);
    }

    private static IntervalBand Band(CurvePoints points, AnalysisResult result) =>
        new() { Colour = Ink.Blue, Slices = points.Interval, Title = $"{Printed.Level(result.Plan.Confidence)} interval" };

    private static Trace Unrepeated(CurvePoints points) =>
        new()
        {
            Colour = Ink.Black,
            Points = points.Unrepeated,
            Dash = [1.5, 3],
            Thickness = 1.2,
            LoneDots = true,
            Hollow = true,
            Title = SpecimenChartWords.UnrepeatedLegend,
        };
}
