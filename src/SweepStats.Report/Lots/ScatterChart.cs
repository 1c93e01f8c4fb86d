using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Lots;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Lots;

/// <summary>How much each level adds to the scatter of single sweeps over frequency.</summary>
internal static class ScatterChart
{
    // Room between the highest point and the frame.
    private const double RoomAbove = 1.06;

    /// <summary>The chart; null where nothing repeats, or some specimen is known from below only at every frequency.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        VarianceLevel[] levels = [.. result.Lots.Frequencies.SelectMany(f => f.Scatter).Select(s => s.Level).Distinct().Order()];
        if (levels.Length == 0)
        {
            return null;
        }

        List<DataPoint>[] lines =
            [.. levels.Select(level => LotTraces.Points(result.Lots.Frequencies, f => Deviation(f, level)))];
        bool gaps = result.Lots.Frequencies.Any(f => f.Scatter.IsEmpty);
        PlotModel model = Frame.Model(
                LotChartWords.ScatterTitle, LotChartWords.ScatterSubtitle(gaps), FrequencyScale.Axis(result.Campaign.Grid),
            Deviations(lines))
            .With(levels.Select((level, i) =>
                new OneOfSeveral(i, levels.Length).Line(lines[i], LotChartWords.ScatterLegend(level))));
        return new Chart(name, ChartKind.Scatter, LotChartWords.ScatterTitle,
            LotChartWords.ScatterDescription(result.Lots.Whole, levels), model);
    }

    private static LinearAxis Deviations(List<DataPoint>[] lines) => ZeroScale.Axis("Standard deviation (dB)",
        RoomAbove * lines.SelectMany(l => l).Select(p => p.Y).Where(double.IsFinite).Max());

    private static double? Deviation(LotFrequency at, VarianceLevel level) =>
        at.Scatter.Where(part => part.Level == level).Select(part => (double?)part.DeviationDb).FirstOrDefault();
}
