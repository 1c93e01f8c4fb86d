using SweepStats.Lots;
using SweepStats.Report.Drawing;
using SweepStats.Report.Lots;

namespace SweepStats.Report.History;

/// <summary>Turns a comparison of lots over several campaigns into a page and its charts.</summary>
public static class LotHistoryReport
{
    /// <summary>Builds <c>index.html</c>, then <c>charts/*.svg</c>, each followed by its PNG where asked for.</summary>
    /// <param name="history">The comparison.</param>
    /// <param name="campaigns">What the analysis of each campaign found.</param>
    /// <param name="png">Also PNG.</param>
    /// <exception cref="PngUnavailableException">PNG was asked for and this machine cannot draw text.</exception>
    public static ImmutableArray<ReportFile> Build(LotHistory history, IReadOnlyList<AnalysisResult> campaigns, bool png)
    {
        ArgumentNullException.ThrowIfNull(history);
        ArgumentNullException.ThrowIfNull(campaigns);
        var names = new FileNames();
        Chart?[] all = [.. LotDifferenceChart.All(history, names), LotsChart.Of(LotsShown.Of(history), names.Next("lots")),
            .. OverTimeChart.All(history.OverTime, names)];
        PlannedChart[] planned = [.. all.OfType<Chart>().Select(chart => new PlannedChart(chart.Name, _ => chart))];
        return ReportBuilder.Files([.. planned], pictures => HistoryPage.Of(history, campaigns, pictures), png,
            campaigns.Max(c => c.Plan.Threads));
    }
}
