using SweepStats.Lots;
using SweepStats.Report.Text;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.History;

/// <summary>Lots of several campaigns in named bands.</summary>
internal static class HistoryBandWords
{
    internal const string HistoryBandsCaption = "Named bands: the same pairs, first less second, in the mean over each band";

    internal static string[] HistoryBandColumns(LotHistory history) =>
        ["Named band", .. HistoryWords.PairTexts, .. HistoryWords.PairFigures(history)];

    internal static IEnumerable<IReadOnlyList<string>> HistoryBandRows(LotHistory history) =>
        history.Bands.SelectMany(b => HistoryWords.PairsOf(b.Pairs).Select(p =>
            (IReadOnlyList<string>)[HistoryBandName(b), HistoryAnswerWords.Named(p.First), HistoryAnswerWords.Named(p.Second),
                .. HistoryWords.PairCells(p, history)]));

    /// <summary>
    /// What a reader of the bands must know: parts that are hidden or not measured by all, and bands that are not compared.
    /// </summary>
    internal static IEnumerable<string> HistoryBandRemarks(LotHistory history)
    {
        foreach (HistoryBand band in history.Bands)
        {
            if (band.ClearShare < 1 - 1e-9)
            {
                yield return band.ClearShare > 0
                    ? $"Figures of {HistoryBandName(band)} are of the {Percent(band.ClearShare)} of it "
                        + "where every specimen of every campaign is bounded from both sides."
                    : $"Nothing is told of {HistoryBandName(band)}: at every compared frequency of it some specimen is known "
                        + "from below only.";
            }

            if (band.Limits.Start < history.Band.Start || band.Limits.Stop > history.Band.Stop)
            {
                yield return $"{PlainText.Of(band.Name)} goes from {Band(band.Limits)}; not all campaigns were measured in "
                    + "all of it.";
            }
        }

        foreach (BandLeftOut band in history.BandsLeftOut)
        {
            yield return band.LimitsDiffer
                ? $"The named band {PlainText.Of(band.Name)} is not compared, since it is not the same in all campaigns: "
                    + $"{string.Join("; ", band.Of.Select(Limits))}. Give it the same limits in every campaign.toml."
                : $"The named band {PlainText.Of(band.Name)}, {Band(band.Of[0].Limits)}, is not compared: no compared frequency "
                    + "lies in it.";
        }
    }

    internal static string HistoryBandName(HistoryBand band) =>
        $"{PlainText.Short(band.Name, LongestSpecimen)}, {Band(band.Band)}";

    private static string Limits(CampaignBand band) => $"{PlainText.Short(band.Campaign, LongestSpecimen)} {Band(band.Limits)}";
}
