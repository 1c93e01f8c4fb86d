using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Repeats;
using SweepStats.Shielding;

namespace SweepStats.Report.Charts;

/// <summary>All charts of a result, in the order of the page.</summary>
internal static class ChartBook
{
    public static ImmutableArray<Chart> Of(AnalysisResult result)
    {
        var names = new FileNames();
        var charts = ImmutableArray.CreateBuilder<Chart>();
        charts.AddRange(Overviews(result, names));
        charts.AddRange(new[] { RangeChart.Of(result, names.Next("dynamic-range")), BandChart.Of(result, names.Next("bands")) }.OfType<Chart>());
        charts.AddRange(OfTrend(result, names).OfType<Chart>());
        charts.AddRange(OfLots(result, names).OfType<Chart>());
        charts.AddRange(OfChoice(result, names).OfType<Chart>());
        charts.AddRange(new[] { BudgetChart.Of(result, names.Next("uncertainty-budget")) }.OfType<Chart>());
        charts.AddRange(BehindFindings(result, names));
        foreach (ShieldingCurve curve in result.Curves)
        {
            charts.Add(ShieldingChart.Of(result, curve, names.Next("shielding", curve.Name.Lot, curve.Name.Specimen)));
            charts.Add(LevelChart.Of(result, curve, names.Next("levels", curve.Name.Lot, curve.Name.Specimen)));
        }

        return charts.ToImmutable();
    }

    private static Chart?[] OfTrend(AnalysisResult result, FileNames names) => result.Trend is not { } trend ? [] :
    [
        TrendChart.OfDeciding(trend, names.Next("trend-requirement")),
        TrendChart.OfMean(trend, names.Next("trend")),
        TrendSlopeChart.Of(result, trend, names.Next("trend-over-frequency")),
    ];

    private static Chart?[] OfLots(AnalysisResult result, FileNames names) =>
    [
        LotFrequencyChart.Of(result, names.Next("lots-over-frequency")),
        LotsChart.Of(LotsShown.Of(result.Lots), names.Next("lots")),
        LotPromiseChart.Of(result, names.Next("lot-promise")),
        ScatterChart.Of(result, names.Next("scatter")),
        ConsistencyChart.OfMeans(result.Lots.Whole, names.Next("consistency-h")),
        ConsistencyChart.OfScatter(result.Lots.Whole, names.Next("consistency-k")),
        ConsistencyChart.OfLotMeans(result.Lots.Whole, names.Next("lot-consistency-h")),
        ConsistencyChart.OfLotScatter(result.Lots.Whole, names.Next("lot-consistency-k")),
        .. OverTimeChart.All(result.Lots.Whole.OverTime, names),
    ];

    private static Chart?[] OfChoice(AnalysisResult result, FileNames names) =>
        result.Choice is not { } choice ? []
        : [.. choice.Bands.Select(band => ChoiceChart.Of(result, (choice, band), band.Name is { } name ? names.Next("choice", name) : names.Next("choice")))];

    private static IEnumerable<Chart> BehindFindings(AnalysisResult result, FileNames names)
    {
        if (OffsetChart.Of(result, names.Next("offsets")) is { } offsets)
        {
            yield return offsets;
        }

        foreach ((RepeatGroup group, ImmutableArray<Finding> findings) in ResidualGroups.Of(result))
        {
            yield return ResidualChart.Of(result.Campaign.Grid, group, findings, names.Next(Parts(group)));
        }

        if (LinearityChart.Of(result, names.Next("linearity")) is { } linearity)
        {
            yield return linearity;
        }
    }

    private static string[] Parts(RepeatGroup group)
    {
        string[] piece = group.Specimen is { } specimen ? [specimen.Lot, specimen.Specimen] : [Wording.Sweeps(group.Role)];
        return ["residuals", .. piece, .. group.Placement is { } placement ? [placement] : Array.Empty<string>()];
    }

    /// <summary>One overview where the lines can be told apart, else one a lot, else parts of a lot.</summary>
    private static IEnumerable<Chart> Overviews(AnalysisResult result, FileNames names)
    {
        if (result.Curves.Length <= OverviewChart.Most)
        {
            yield return OverviewChart.Of(result, result.Curves, names.Next("shielding"), Wording.OverviewTitle);
            yield break;
        }

        foreach (IGrouping<string, ShieldingCurve> lot in result.Curves.GroupBy(c => c.Name.Lot))
        {
            ShieldingCurve[][] parts = [.. lot.Chunk(OverviewChart.Most)];
            for (int i = 0; i < parts.Length; i++)
            {
                yield return OverviewChart.Of(
                    result, [.. parts[i]], names.Next("shielding", lot.Key), Wording.OverviewTitleOfLot(Frame.Name(lot.Key), i + 1, parts.Length));
            }
        }
    }
}
