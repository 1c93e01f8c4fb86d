using OxyPlot;
using SweepStats.Bands;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Report.Specimens;

/// <summary>
/// What the set-up can see against what it has to see: the smallest dynamic range of all specimens, and the requirement or the
/// shielding found.
/// </summary>
internal static class RangeChart
{
    /// <summary>The chart; null where no dynamic range is known.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        FrequencyGrid grid = result.Campaign.Grid;
        List<DataPoint> range =
            [.. Enumerable.Range(0, grid.Count).Select(i => new DataPoint(grid[i].Value, Smallest(result, i)))];
        if (!range.Any(p => double.IsFinite(p.Y)))
        {
            return null;
        }

        List<ChartSeries> needs = Needs(result, grid);
        IReadOnlyList<DataPoint>? wanted = result.Plan.Rule is { } rule ? Wanted(result, rule) : null;
        string title = SpecimenChartWords.RangeTitle(wanted is not null);
        PlotModel model = Frame.Model(title, SpecimenChartWords.RangeSubtitle(result), FrequencyScale.Axis(grid),
                DecibelScale.Axis("Dynamic range (dB)", [.. range.Concat(needs.SelectMany(Points)).Select(p => p.Y)], 0.16))
            .With([Missing(range, wanted), .. needs,
                new Trace { Colour = Ink.Black, Points = range, Thickness = 1.8, Title = "usable dynamic range" }]);
        return new Chart(name, ChartKind.Range, title, SpecimenChartWords.RangeDescription(result), model);
    }

    private static IReadOnlyList<DataPoint> Wanted(AnalysisResult result, DecisionRule rule) =>
        RequirementLine.Points(rule.Requirement, result.Campaign.Grid, rule.GuardBand.Value + result.Plan.Margin.Value);

    private static IReadOnlyList<DataPoint> Points(ChartSeries series) =>
        series is OpenBounds arrows ? arrows.Bounds : ((Trace)series).Points;

    private static double Smallest(AnalysisResult result, int point)
    {
        double smallest = double.PositiveInfinity;
        foreach (ShieldingCurve curve in result.Curves)
        {
            smallest = Math.Min(smallest, curve.Readings[point].Evidence.DynamicRange?.Value ?? double.PositiveInfinity);
        }

        return double.IsFinite(smallest) ? smallest : double.NaN;
    }

    private static List<ChartSeries> Needs(AnalysisResult result, FrequencyGrid grid)
    {
        if (result.Plan.Rule is { Requirement: var requirement, GuardBand.Value: var guard })
        {
            return
            [
                new Trace
                {
                    Colour = Ink.Red, Points = Wanted(result, result.Plan.Rule),
                    Dash = [3, 3], Title = "requirement"
                        + $"{(guard > 0 ? $", {Printed.Exact(guard, "dB")} guard band" : string.Empty)} and "
                        + $"{PrintedLevel.Ratio(result.Plan.Margin.Value)} margin",
                },
                RequirementLine.Of(requirement, grid)!,
            ];
        }

        return Found(result, grid);
    }

    /// <summary>
    /// The highest shielding found at each frequency, as a value or as a bound, whatever the highest reading is.
    /// </summary>
    private static List<ChartSeries> Found(AnalysisResult result, FrequencyGrid grid)
    {
        List<DataPoint> values = [];
        List<DataPoint> bounds = [];
        for (int i = 0; i < grid.Count; i++)
        {
            double hertz = grid[i].Value;
            double bound = Highest(result, i, r => r is ShieldingReading.AtLeast b ? b.Bound.Value : double.NaN);
            double value = Highest(result, i, r => r is ShieldingReading.Measured m ? m.Shielding.Value.Value : double.NaN);
            values.Add(new DataPoint(hertz, double.IsFinite(bound) ? double.NaN : value));
            bounds.AddRange(double.IsFinite(bound) ? [new DataPoint(hertz, bound)] : []);
        }

        var line = new Trace
        {
            Colour = Ink.Blue,
            Points = values,
            LoneDots = true,
            Dash = [8, 3],
            Title = "highest shielding found",
        };
        var arrows = new OpenBounds { Colour = Ink.Blue, Bounds = bounds, Title = SpecimenChartWords.ArrowLegend };
        return values.Exists(p => double.IsFinite(p.Y)) ? [line, arrows] : [arrows];
    }

    private static double Highest(AnalysisResult result, int point, Func<ShieldingReading, double> of) =>
        result.Curves.Select(c => of(c.Readings[point])).Where(double.IsFinite).DefaultIfEmpty(double.NaN).Max();

    private static IntervalBand? Missing(List<DataPoint> range, IReadOnlyList<DataPoint>? wanted)
    {
        if (wanted is null)
        {
            return null;
        }

        List<Slice> missing = [.. range.Zip(wanted, (have, want) =>
            have.Y < want.Y ? new Slice(have.X, have.Y, want.Y) : new Slice(have.X, double.NaN, double.NaN))];
        return missing.Any(s => !double.IsNaN(s.Low))
            ? new IntervalBand { Colour = Ink.Red, Slices = missing, Strength = 40, Title = "range missing" } : null;
    }
}
