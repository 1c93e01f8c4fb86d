using SweepStats.Bands;

namespace SweepStats.Files.Results;

/// <summary>bands.csv: one row a specimen.</summary>
public static class BandsCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "bands.csv";

    /// <summary>
    /// First line. A figure has its estimate, then its lower and upper limit; an empty cell means that there is none. Confidence
    /// is the level of the intervals, which are two-sided (a single limit is the end of one whose other end is open), and the
    /// one-sided level of <c>at_least_db</c>.
    /// </summary>
    public const string Header =
        "lot,specimen,start_hz,stop_hz,at_least_db,weakest_hz,mean_db,mean_low_db,mean_high_db,p10_db,p10_low_db,p10_high_db,"
            + "share_meeting,share_low,share_high,capped_points,points,confidence";

    /// <summary>Writes the table.</summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        using var rows = new CsvRows(to, Header);
        foreach (BandStatement band in result.Bands)
        {
            rows.Text(band.Name.Lot).Text(band.Name.Specimen).Band(band.Band);
            rows.Level(band.AtLeast?.Value).Exact(band.WeakestAt?.Value);
            rows.Figure(band.MeanDb).Figure(band.TenthPercentileDb).Figure(result.Verdict.ShareMeeting(band));
            rows.Count(band.CappedCount).Count(band.PointCount).Exact(result.Plan.Confidence.Level).End();
        }
    }
}
