using OxyPlot;
using SweepStats.Shielding;

namespace SweepStats.Report.Charts;

/// <summary>Shielding of one specimen: estimate with interval, arrows where only a bound is known.</summary>
internal static class ShieldingChart
{
    public static Chart Of(AnalysisResult result, ShieldingCurve curve, string name)
    {
        var points = new CurvePoints(curve);
        Trace? required = RequirementLine.Of(result.Plan.Requirement, result.Campaign.Grid);
        Trace? guarded = RequirementLine.Guarded(result.Plan.Rule, result.Campaign.Grid);
        string piece = Frame.Name(curve.Name.ToString());
        string title = Wording.ShieldingTitle(piece);
        IEnumerable<double> seen = points.Seen.Concat((guarded ?? required)?.Points.Select(p => p.Y) ?? []);
        PlotModel model = Frame.Model(
                title, Wording.ShieldingSubtitle(curve, result.Floor is not null),
                FrequencyScale.Axis(result.Campaign.Grid), DecibelScale.Axis("Shielding (dB)", seen, points.Bounds.Count > 0 ? 0.16 : 0.06))
            .With(
                points.HasEstimates ? Band(points, result) : null,
                required,
                guarded,
                points.HasEstimates ? new Trace { Colour = Ink.Black, Points = points.Estimate, LoneDots = true, Title = "estimate" } : null,
                points.HasUnrepeated ? Unrepeated(points) : null,
                points.Bounds.Count > 0 ? new OpenBounds { Colour = Ink.Black, Bounds = points.Bounds, Title = Wording.ArrowLegend } : null,
                points.Unreadable.Count > 0
                    ? new EdgeMarks { Colour = Ink.Red, Places = points.Unreadable, FromTop = false, Title = Wording.UnreadableLegend } : null);
        return new Chart(name, ChartKind.Shielding, title, Wording.ShieldingDescription(curve, result.Bands.FirstOrDefault(b => b.Name == curve.Name)), model);
    }

    private static IntervalBand Band(CurvePoints points, AnalysisResult result) =>
        new() { Colour = Ink.Blue, Slices = points.Interval, Title = $"{Wording.Level(result.Plan.Confidence)} interval" };

    private static Trace Unrepeated(CurvePoints points) =>
        new() { Colour = Ink.Black, Points = points.Unrepeated, Dash = [1.5, 3], Thickness = 1.2, LoneDots = true, Hollow = true, Title = Wording.UnrepeatedLegend };
}
