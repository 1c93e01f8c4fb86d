using OxyPlot;
using SweepStats.Lots;
using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Lots;

/// <summary>What each lot promises over frequency: a share of its specimens shields at least this much.</summary>
internal static class LotPromiseChart
{
    /// <summary>
    /// The chart; null where no lot promises anything: a limit below 0 dB, as two specimens that differ give it, is no promise of
    /// shielding.
    /// </summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        LotComparison lots = result.Lots;
        List<DataPoint>[] promised = Promised(lots);
        int[] told = [.. Enumerable.Range(0, promised.Length).Where(l => LotTraces.Any(promised[l]))];
        if (told.Length == 0)
        {
            return null;
        }

        int[] shown = Weakest(told, promised);
        AskedLines asked = AskedLines.Of(result);
        IReadOnlyList<string> names = Frame.Names(lots.Lots);
        string title = LotChartWords.LotPromiseTitle(lots.Question);
        PlotModel model = Frame.Model(title, LotChartWords.LotPromiseSubtitle(lots, shown.Length, told.Length),
            FrequencyScale.Axis(result.Campaign.Grid),
                DecibelScale.Axis("Shielding promised (dB)",
                    shown.SelectMany(l => promised[l]).Select(p => p.Y).Concat(asked.Seen)))
            .With([.. shown.Select((l, i) => new OneOfSeveral(i, shown.Length).Line(promised[l], names[l])), asked.Required,
                asked.Guarded]);
        return new Chart(name, ChartKind.LotPromise, title, LotChartWords.LotPromiseDescription(lots, shown), model);
    }

    private static List<DataPoint>[] Promised(LotComparison lots) =>
        [.. lots.Lots.Select((_, l) =>
            LotTraces.Points(lots.Frequencies, f => f.Lots[l].AtMostPromisedDb is { } promised and >= 0 ? promised : null))];

    private static int[] Weakest(int[] told, List<DataPoint>[] promised) =>
        [.. LotTraces.Foremost(told.Length, i => -promised[told[i]].Where(p => double.IsFinite(p.Y)).Min(p => p.Y))
            .Select(i => told[i])];
}
