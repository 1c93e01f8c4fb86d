using SweepStats.Lots;

namespace SweepStats.Files.Results;

/// <summary>lots-by-frequency.csv of several campaigns: one row for each two lots at each frequency.</summary>
public static class LotHistoryFrequenciesCsv
{
    /// <summary>
    /// First line. The difference is the first lot less the second; low and high are of the level that stands beside them, at
    /// this frequency by itself. p_adjusted allows for the number of frequencies (false discovery rate); differ is yes only where
    /// the pair is said to differ. Where a specimen is capped, nothing is compared and cells are empty.
    /// </summary>
    public const string Header =
        "frequency_hz,first_campaign,first,second_campaign,second,difference_db,low_db,high_db,confidence,dof,p,p_adjusted,"
            + "differ,capped_first,capped_second";

    /// <summary>Writes the table.</summary>
    public static void Write(LotHistory history, Stream to)
    {
        ArgumentNullException.ThrowIfNull(history);
        using var rows = new CsvRows(to, Header);
        for (int f = 0; f < history.PointCount; f++)
        {
            foreach (HistoryPair pair in history.Pairs)
            {
                Row(rows, history, pair, f);
            }
        }
    }

    private static void Row(CsvRows rows, LotHistory history, HistoryPair pair, int f)
    {
        HistoryPoint point = pair.Points[f];
        rows.Exact(history.Frequencies[f].Value);
        LotHistoryPairsCsv.Names(rows, pair);
        rows.Level(point.DifferenceDb).Interval(point.Interval(history.Question.Confidence));
        rows.Exact(history.Question.Confidence.Level).DegreesOfFreedom(point.DegreesOfFreedom);
        rows.Probability(point.Probability).Probability(point.Adjusted).YesNo(history.DifferAt(pair, point));
        rows.Count(point.CappedFirst).Count(point.CappedSecond).End();
    }
}
