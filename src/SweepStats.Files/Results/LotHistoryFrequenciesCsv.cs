using SweepStats.Lots;
using SweepStats.Statistics;

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
        rows.Cell(ResultNumber.Exact(history.Frequencies[f].Value));
        LotHistoryPairsCsv.Names(rows, pair);
        Interval? interval = point.Interval(history.Question.Confidence);
        rows.Cell(ResultNumber.Level(point.DifferenceDb));
        rows.Cell(ResultNumber.Level(interval?.Low)).Cell(ResultNumber.Level(interval?.High));
        rows.Cell(ResultNumber.Exact(history.Question.Confidence.Level));
        rows.Cell(ResultNumber.DegreesOfFreedom(point.DegreesOfFreedom));
        rows.Cell(ResultNumber.Probability(point.Probability)).Cell(ResultNumber.Probability(point.Adjusted));
        rows.Cell(history.DifferAt(pair, point) ? "yes" : "no");
        rows.Cell(ResultNumber.Count(point.CappedFirst)).Cell(ResultNumber.Count(point.CappedSecond));
        rows.End();
    }
}
