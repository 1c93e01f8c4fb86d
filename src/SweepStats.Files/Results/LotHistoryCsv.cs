using SweepStats.Lots;

namespace SweepStats.Files.Results;

/// <summary>lots.csv of several campaigns: one row a lot.</summary>
public static class LotHistoryCsv
{
    /// <summary>
    /// First line; columns as in <see cref="LotsCsv"/>, confidence being the level of intervals and promises, over the part of
    /// the band that is clear for every specimen of every campaign.
    /// </summary>
    public const string Header =
        "campaign,start_hz,stop_hz,clear_share,lot,specimens,mean_db,mean_low_db,mean_high_db,promised_db,promised_rank_db,"
            + "plain_mean_db,confidence";

    /// <summary>Writes the table.</summary>
    public static void Write(LotHistory history, Stream to)
    {
        ArgumentNullException.ThrowIfNull(history);
        using var rows = new CsvRows(to, Header);
        foreach (HistoryLot lot in history.Lots)
        {
            rows.Text(lot.Campaign);
            LotsCsv.Figures(rows, history.Band, history.ClearShare, lot.Figures);
            rows.Exact(history.Question.Confidence.Level).End();
        }
    }
}
