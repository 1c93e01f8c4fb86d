using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;
using SweepStats.Shielding;

namespace SweepStats.Report.Specimens;

/// <summary>
/// The levels behind the shielding of one specimen: reference, covered, floor, and the range in which a covered level can be
/// told.
/// </summary>
internal static class LevelChart
{
    /// <summary>The chart of a specimen; its file bears the name.</summary>
    public static Chart Of(AnalysisResult result, ShieldingCurve curve, string name)
    {
        List<DataPoint> reference = Points(curve, e => e.ReferenceDb);
        List<DataPoint> covered = Points(curve, e => e.CoveredDb);
        List<DataPoint> floor = Points(curve, e => e.FloorDb);
        string title = SpecimenChartWords.LevelsTitle(Frame.Name(curve.Name.ToString()));
        PlotModel model = Frame.Model(title, SpecimenChartWords.LevelsSubtitle(curve, result),
                FrequencyScale.Axis(result.Campaign.Grid),
                DecibelScale.Axis($"Level ({PrintedLevel.Unit(result.Campaign.Scale)})",
                    [.. reference.Concat(covered).Concat(floor).Select(p => p.Y)]))
            .With(
                Usable(curve),
                Ambient(curve),
                new Trace { Colour = Ink.Black, Points = reference, Thickness = 1.8, Title = "reference" },
                new Trace { Colour = Ink.Blue, Points = covered, Dash = [8, 3], Thickness = 1.8, Title = "covered" },
                Floor(floor, result));
        return new Chart(name, ChartKind.Levels, title, SpecimenChartWords.LevelsDescription(curve, result), model);
    }

    private static EdgeMarks Ambient(ShieldingCurve curve) => new()
    {
        Colour = Ink.Red,
        Places = [.. curve.Readings.Where(r => r.Evidence.Ambient).Select(r => r.Evidence.At.Value)],
        FromTop = true,
        Title = "ambient signal",
    };

    private static IntervalBand? Usable(ShieldingCurve curve)
    {
        List<Slice> usable = [.. curve.Readings.Select(r => Usable(r.Evidence))];
        return usable.TrueForAll(s => double.IsNaN(s.Low)) ? null
            : new IntervalBand { Colour = Ink.Blue, Slices = usable, Strength = 26, Outlined = false, Title = "usable range" };
    }

    private static Trace? Floor(List<DataPoint> floor, AnalysisResult result) =>
        !floor.Exists(p => double.IsFinite(p.Y)) ? null : new Trace
        {
            Colour = Ink.Grey,
            Points = floor,
            Dash = [2, 3],
            Thickness = 1.6,
            Title = SpecimenChartWords.FloorLegend(result.Floor),
        };

    private static List<DataPoint> Points(ShieldingCurve curve, Func<ReadingEvidence, double?> level) =>
        [.. curve.Readings.Select(r => new DataPoint(r.Evidence.At.Value, level(r.Evidence) ?? double.NaN))];

    private static Slice Usable(ReadingEvidence evidence) => evidence.DynamicRange is { Value: > 0 } range
        ? new Slice(evidence.At.Value, evidence.ReferenceDb - range.Value, evidence.ReferenceDb)
        : new Slice(evidence.At.Value, double.NaN, double.NaN);
}
