using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;
using SweepStats.Shielding;

namespace SweepStats.Report.Specimens;

/// <summary>Shielding of one specimen: estimate with interval, arrows where only a bound is known.</summary>
internal static class ShieldingChart
{
    public static Chart Of(AnalysisResult result, ShieldingCurve curve, string name)
    {
        var points = new CurvePoints(curve);
        Trace? required = RequirementLine.Of(result.Plan.Requirement, result.Campaign.Grid);
        Trace? guarded = RequirementLine.Guarded(result.Plan.Rule, result.Campaign.Grid);
        string piece = Frame.Name(curve.Name.ToString());
        string title = SpecimenChartWords.ShieldingTitle(piece);
        IEnumerable<double> seen = points.Seen.Concat((guarded ?? required)?.Points.Select(p => p.Y) ?? []);
        PlotModel model = Frame.Model(
                title, SpecimenChartWords.ShieldingSubtitle(curve, result.Floor is not null),
                FrequencyScale.Axis(result.Campaign.Grid),
            DecibelScale.Axis("Shielding (dB)", seen, points.Bounds.Count > 0 ? 0.16 : 0.06))
            .With(
                points.HasEstimates ? Band(points, result) : null,
                required,
                guarded,
                points.HasEstimates
                    ? new Trace { Colour = Ink.Black, Points = points.Estimate, LoneDots = true, Title = "estimate" } : null,
                points.HasUnrepeated ? Unrepeated(points) : null,
                points.Bounds.Count > 0 ? new OpenBounds
                {
                    Colour = Ink.Black,
                    Bounds = points.Bounds,
                    Title = SpecimenChartWords.ArrowLegend,
                } : null,
                points.Unreadable.Count > 0
                    ? new EdgeMarks
                    {
                        Colour = Ink.Red,
                        Places = points.Unreadable,
                        FromTop = false,
                        Title = SpecimenChartWords.UnreadableLegend,
                    } : null);
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
