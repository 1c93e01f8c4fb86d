using OxyPlot;
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
        IReadOnlyList<DataPoint>? wanted = result.Plan.Rule is { } r
            ? RequirementLine.Points(r.Requirement, grid, r.GuardBand.Value + result.Plan.Margin.Value) : null;
        IEnumerable<double> seen = range.Concat(needs.OfType<Trace>().SelectMany(t => t.Points))
            .Concat(needs.OfType<OpenBounds>().SelectMany(b => b.Bounds)).Select(p => p.Y);
        PlotModel model = Frame.Model(
                SpecimenChartWords.RangeTitle(wanted is not null), SpecimenChartWords.RangeSubtitle(result),
                FrequencyScale.Axis(grid), DecibelScale.Axis("Dynamic range (dB)", [.. seen], 0.16))
            .With([Missing(range, wanted), .. needs,
                new Trace { Colour = Ink.Black, Points = range, Thickness = 1.8, Title = "usable dynamic range" }]);
        return new Chart(name, ChartKind.Range, SpecimenChartWords.RangeTitle(wanted is not null),
            SpecimenChartWords.RangeDescription(result), model);
    }

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
                    Colour = Ink.Red, Points = RequirementLine.Points(requirement, grid, guard + result.Plan.Margin.Value),
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
            double value = result.Curves.Max(
                c => c.Readings[i] is ShieldingReading.Measured m ? m.Shielding.Value.Value : double.NegativeInfinity);
            double bound =
                result.Curves.Max(c => c.Readings[i] is ShieldingReading.AtLeast b ? b.Bound.Value : double.NegativeInfinity);
            bool isBound = double.IsFinite(bound);
            values.Add(new DataPoint(grid[i].Value, isBound || !double.IsFinite(value) ? double.NaN : value));
            if (isBound)
            {
                bounds.Add(new DataPoint(grid[i].Value, bound));
            }
        }

        List<ChartSeries> series = [];
        if (values.Any(p => double.IsFinite(p.Y)))
        {
            series.Add(new Trace
            {
                Colour = Ink.Blue,
                Points = values,
                LoneDots = true,
                Dash = [8, 3],
                Title = "highest shielding found",
            });
        }

        if (bounds.Count > 0)
        {
            series.Add(new OpenBounds { Colour = Ink.Blue, Bounds = bounds, Title = SpecimenChartWords.ArrowLegend });
        }

        return series;
    }

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
