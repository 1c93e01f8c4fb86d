using SweepStats.Lots;
using SweepStats.Quantities;

namespace SweepStats.Files.Results;

/// <summary>
/// lot-pairs.csv of several campaigns: one row for each two lots over the whole band, then over each named one.
/// </summary>
public static class LotHistoryPairsCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "lot-pairs.csv";

    /// <summary>
    /// First line. Band is empty for the whole one. The difference is the first lot less the second in the mean over the clear
    /// share; low and high are of the level that stands beside them. p_of_means is of that mean alone, p_adjusted of the answer
    /// for the pair, all its questions and all pairs allowed for. An empty cell means that there is no figure.
    /// </summary>
    public const string Header =
        "band,start_hz,stop_hz,clear_share,first_campaign,first,second_campaign,second,difference_db,low_db,high_db,confidence,"
            + "p_of_means,p_adjusted";

    /// <summary>Writes the table.</summary>
    public static void Write(LotHistory history, Stream to)
    {
        ArgumentNullException.ThrowIfNull(history);
        using var rows = new CsvRows(to, Header);
        foreach (HistoryPair pair in history.Pairs)
        {
            Band(rows, null, history.Band, history.ClearShare);
            Row(rows, pair, history.Question);
        }

        foreach (HistoryBand band in history.Bands)
        {
            foreach (HistoryPair pair in band.Pairs)
            {
                Band(rows, band.Name, band.Band, band.ClearShare);
                Row(rows, pair, history.Question);
            }
        }
    }

    internal static void Names(CsvRows rows, HistoryPair pair) =>
        rows.Text(pair.First.Campaign).Text(pair.First.Figures.Lot).Text(pair.Second.Campaign).Text(pair.Second.Figures.Lot);

    private static void Band(CsvRows rows, string? name, FrequencyBand band, double clearShare) =>
        rows.Text(name).Band(band).Level(clearShare);

    private static void Row(CsvRows rows, HistoryPair pair, LotQuestion question)
    {
        Names(rows, pair);
        rows.Level(pair.Tested?.Difference).Interval(pair.Tested?.Interval(question.FalseAlarm / 2));
        rows.Exact(question.Confidence.Level).Probability(pair.Tested?.ProbabilityAlike).Probability(pair.Adjusted).End();
    }
}
