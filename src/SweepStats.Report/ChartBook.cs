using SweepStats.Repeats;
using SweepStats.Report.Budgets;
using SweepStats.Report.Choice;
using SweepStats.Report.Drawing;
using SweepStats.Report.Fields;
using SweepStats.Report.Findings;
using SweepStats.Report.Lots;
using SweepStats.Report.Setup;
using SweepStats.Report.Specimens;
using SweepStats.Report.Trends;
using SweepStats.Shielding;

namespace SweepStats.Report;

/// <summary>All charts of a result, in the order of the page.</summary>
internal static class ChartBook
{
    // So few lots or moments are read off a table.
    private const int FewPoints = 3;

    /// <summary>The charts as far as they have something to show.</summary>
    public static ImmutableArray<Chart> Of(AnalysisResult result) => [.. Planned(result).Select(c => c.Model()).OfType<Chart>()];

    /// <summary>Every chart that a result may have, named but not built.</summary>
    public static ImmutableArray<PlannedChart> Planned(AnalysisResult result)
    {
        // One after the other: of two charts that would have the same name the later one gets a number.
        var names = new FileNames();
        var charts = ImmutableArray.CreateBuilder<PlannedChart>();
        charts.AddRange(Overviews(result, names));
        charts.Add(new PlannedChart(names.Next("dynamic-range"), name => RangeChart.Of(result, name)));
        charts.Add(new PlannedChart(names.Next("bands"), name => BandChart.Of(result, name)));
        charts.AddRange(OfTrend(result, names));
        charts.AddRange(OfLots(result, names));
        charts.AddRange(OfChoice(result, names));
        charts.AddRange(PulseWords.AsksForField(result)
            ? [new PlannedChart(names.Next("pulse"), name => PulseChart.Of(result, name))] : Array.Empty<PlannedChart>());
        charts.Add(new PlannedChart(names.Next("uncertainty-budget"), name => BudgetChart.Of(result, name)));
        charts.AddRange(BehindFindings(result, names));
        charts.AddRange(result.Curves.SelectMany(curve => OfSpecimen(result, curve, names)));
        return charts.ToImmutable();
    }

    private static IEnumerable<PlannedChart> OfTrend(AnalysisResult result, FileNames names) =>
        result.Trend is not { } trend ? [] :
    [
        new PlannedChart(names.Next("trend-requirement"), name => TrendChart.OfDeciding(trend, name)),
        new PlannedChart(names.Next("trend"), name => TrendChart.OfMean(trend, name)),
        new PlannedChart(names.Next("trend-over-frequency"), name => TrendSlopeChart.Of(result, trend, name)),
    ];

    private static IEnumerable<PlannedChart> OfLots(AnalysisResult result, FileNames names) =>
    [
        new PlannedChart(names.Next("lots-over-frequency"), name => LotFrequencyChart.Of(result, name)),
        new PlannedChart(names.Next("lots"), name => LotsChart.Of(LotsShown.Of(result.Lots), name)),
        new PlannedChart(names.Next("lot-promise"), name => LotPromiseChart.Of(result, name)),
        new PlannedChart(names.Next("scatter"), name => ScatterChart.Of(result, name)),
        .. Consistency(result, names),
        .. OverTimeChart.All([.. result.Lots.Whole.OverTime.Where(c => c.Points.Length > FewPoints)], names)
            .Select(chart => new PlannedChart(chart.Name, _ => chart)),
    ];

    // Of three lots the picture of the lots says whatever these would.
    private static IEnumerable<PlannedChart> Consistency(AnalysisResult result, FileNames names) =>
        result.Lots.Lots.Length <= FewPoints ? [] :
    [
        new PlannedChart(names.Next("consistency-h"), name => ConsistencyChart.OfMeans(result.Lots.Whole, name)),
        new PlannedChart(names.Next("consistency-k"), name => ConsistencyChart.OfScatter(result.Lots.Whole, name)),
        new PlannedChart(names.Next("lot-consistency-h"), name => ConsistencyChart.OfLotMeans(result.Lots.Whole, name)),
        new PlannedChart(names.Next("lot-consistency-k"), name => ConsistencyChart.OfLotScatter(result.Lots.Whole, name)),
    ];

    private static IEnumerable<PlannedChart> OfChoice(AnalysisResult result, FileNames names) =>
        result.Choice is not { } choice ? [] : choice.Bands.Select(
        band => new PlannedChart(band.Name is { } own ? names.Next("choice", own) : names.Next("choice"),
            name => ChoiceChart.Of(result, choice, band, name)));

    private static IEnumerable<PlannedChart> BehindFindings(AnalysisResult result, FileNames names) =>
    [
        new PlannedChart(names.Next("offsets"), name => OffsetChart.Of(result, name)),
        .. ResidualGroups.Of(result).Select(
            g => new PlannedChart(names.Next(Parts(g.Group)),
                name => ResidualChart.Of(result.Campaign.Grid, g.Group, g.Findings, name))),
        new PlannedChart(names.Next("linearity"), name => LinearityChart.Of(result, name)),
    ];

    private static IEnumerable<PlannedChart> OfSpecimen(AnalysisResult result, ShieldingCurve curve, FileNames names) =>
    [
        new PlannedChart(names.Next("shielding", curve.Name.Lot, curve.Name.Specimen),
            name => ShieldingChart.Of(result, curve, name)) { Of = [curve.Name] },
        new PlannedChart(names.Next("levels", curve.Name.Lot, curve.Name.Specimen),
            name => LevelChart.Of(result, curve, name)) { Of = [curve.Name] },
    ];

    private static string[] Parts(RepeatGroup group)
    {
        string[] piece = group.Specimen is { } specimen ? [specimen.Lot, specimen.Specimen]
            : [FindingChartWords.Sweeps(group.Role)];
        return ["residuals", .. piece, .. group.Placement is { } placement ? [placement] : Array.Empty<string>()];
    }

    /// <summary>One overview where the lines can be told apart, else one a lot, else parts of a lot.</summary>
    private static IEnumerable<PlannedChart> Overviews(AnalysisResult result, FileNames names)
    {
        if (result.Curves.Length <= OverviewChart.Most)
        {
            yield return Overview(result, result.Curves, names.Next("shielding"), SpecimenChartWords.OverviewTitle);
            yield break;
        }

        foreach (IGrouping<string, ShieldingCurve> lot in result.Curves.GroupBy(c => c.Name.Lot))
        {
            ShieldingCurve[][] parts = [.. lot.Chunk(OverviewChart.Most)];
            for (int i = 0; i < parts.Length; i++)
            {
                string title = SpecimenChartWords.OverviewTitleOfLot(Frame.Name(lot.Key), i + 1, parts.Length);
                yield return Overview(result, [.. parts[i]], names.Next("shielding", lot.Key), title);
            }
        }
    }

    private static PlannedChart Overview(AnalysisResult result, ImmutableArray<ShieldingCurve> curves, string name,
        string title) =>
        new(name, own => OverviewChart.Of(result, curves, own, title))
        {
            Of = [.. curves.Select(c => c.Name)],
            IsOverview = true,
        };
}
