using SweepStats.Lots;
using SweepStats.Quantities;

namespace SweepStats.Files.Results;

/// <summary>lots.csv: one row a lot for the whole band, then for each named one.</summary>
public static class LotsCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "lots.csv";

    /// <summary>
    /// First line. Band is empty for the whole analysed one. Means and promises are over the share of the band that is clear for
    /// all specimens; Limits of the mean and promises hold what all specimens share, shared_error_db, and are empty where the
    /// reference was swept once; between_lots_low_db, between_lots_high_db and promised_between_lots_db are by the scatter of the
    /// specimens alone, for comparing lots of this campaign; foremost is yes for a lot that cannot be told from the best; p is
    /// the probability of lots that differ this much where they are alike; h and k are Mandel's. Confidence is the level of the
    /// intervals, which are two-sided, and the one-sided level of the promises. An empty cell means that there is no figure.
    /// </summary>
    public const string Header =
        "band,start_hz,stop_hz,clear_share,lot,specimens,mean_db,mean_low_db,mean_high_db,promised_db,promised_rank_db,"
        + "plain_mean_db,shared_error_db,p,h,k,"
        + "between_lots_low_db,between_lots_high_db,promised_between_lots_db,confidence,foremost";

    /// <summary>Writes the table.</summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        using var rows = new CsvRows(to, Header);
        foreach (LotBand band in result.Lots.Bands)
        {
            for (int l = 0; l < band.Lots.Length; l++)
            {
                LotSummary lot = band.Lots[l];
                GroupMember? member = band.LotStanding?.Members[l];
                rows.Text(band.Name);
                Figures(rows, band.Band, band.ClearShare, lot);
                rows.Level(band.SharedErrorDb).Probability(band.Probability).Level(member?.H).Level(member?.K);
                rows.Interval(lot.BetweenLotsIntervalDb).Level(lot.BetweenLotsLimitDb);
                rows.Exact(result.Lots.Question.Confidence.Level);
                rows.YesNo(result.MayPrefer && !band.Foremost.IsEmpty ? band.Foremost.Contains(lot.Lot) : null).End();
            }
        }
    }

    /// <summary>The figures of a lot, from the band to the plain mean.</summary>
    internal static void Figures(CsvRows rows, FrequencyBand band, double clearShare, LotSummary lot) =>
        rows.Band(band).Level(clearShare).Text(lot.Lot).Count(lot.Specimens).Level(lot.MeanDb).Interval(lot.MeanIntervalDb)
            .Level(lot.ToleranceLimitDb).Level(lot.RankLimitDb).Level(lot.PlainMeanDb);
}
