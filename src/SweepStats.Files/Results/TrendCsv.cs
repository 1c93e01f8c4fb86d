using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Trends;

namespace SweepStats.Files.Results;

/// <summary>trend.csv: the trend along an ordered factor, one row a band, one a value of the factor, one a frequency.</summary>
public static class TrendCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "trend.csv";

    /// <summary>
    /// First line. row is "band" (name empty for the whole one), "value" or "frequency". Slopes are in dB for each unit of the
    /// factor, with their two-sided interval; sd_db is that of specimens about the line; p_straight of frequencies allows for
    /// their number. basis is what the requirement is held against: line, groups or nothing. met_up_to and not_met_from of a
    /// frequency are of that frequency; outcome is that of the requirement at a value, at every frequency. confidence is the
    /// level of slope intervals, and of an outcome the one-sided level of the requirement. An empty cell means that there is no
    /// figure.
    /// </summary>
    public const string Header =
        "row,band,start_hz,stop_hz,factor,value,specimens,mean_db,clear_share,capped_specimens,"
        + "slope_db,slope_low_db,slope_high_db,sd_db,p_straight,basis,met_up_to,not_met_from,outcome,confidence";

    /// <summary>Writes the table; the header alone where there is no trend.</summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        using var rows = new CsvRows(to, Header);
        if (result.Trend is not { } trend)
        {
            return;
        }

        string level = ResultNumber.Exact(result.Plan.Confidence.Level);
        foreach (TrendBand band in trend.Bands)
        {
            Start(rows.Cell("band").Text(band.Name), trend, band.Band.Start, band.Band.Stop);
            rows.Cell("").Cell(ResultNumber.Count(trend.Specimens.Length)).Cell("")
                .Cell(ResultNumber.Level(band.ClearShare)).Cell("");
            Line(rows, band.Line, band.WithinLots, band.Line?.StraightProbability);
            Empty(rows, 4).Cell(level).End();
        }

        foreach (FactorGroup group in trend.Groups)
        {
            Empty(rows.Cell("value"), 3).Text(trend.Factor).Cell(ResultNumber.Exact(group.Value));
            rows.Cell(ResultNumber.Count(group.Specimens)).Cell(ResultNumber.Level(group.MeanDb));
            Empty(rows, 10).Cell(SummaryJson.Outcome(result.Verdict.Relied(group.Outcome)) ?? "");
            rows.Cell(result.Plan.Rule is { } rule ? ResultNumber.Exact(rule.Level.Level) : "").End();
        }

        foreach (TrendFrequency at in trend.Frequencies)
        {
            Start(rows.Cell("frequency").Text(null), trend, at.At, at.At);
            rows.Cell("").Cell(ResultNumber.Count(trend.Specimens.Length)).Cell("").Cell("").Cell(ResultNumber.Count(at.Capped));
            Line(rows, at.Line, null, at.StraightAdjusted);
            rows.Cell(TrendJson.Basis(at.Basis)).Cell(Significant(at.MetUpTo)).Cell(Significant(at.NotMetFrom)).Cell("")
                .Cell(level).End();
        }
    }

    private static void Start(CsvRows rows, FactorTrend trend, Hertz start, Hertz stop) =>
        rows.Cell(ResultNumber.Exact(start.Value)).Cell(ResultNumber.Exact(stop.Value)).Text(trend.Factor);

    private static CsvRows Empty(CsvRows rows, int cells)
    {
        for (int i = 0; i < cells; i++)
        {
            rows.Cell("");
        }

        return rows;
    }

    private static void Line(CsvRows rows, TrendLine? line, TrendSlope? within, double? straight)
    {
        Interval? interval = within?.IntervalDb ?? line?.SlopeIntervalDb;
        rows.Cell(Significant(within?.SlopeDb ?? line?.SlopeDb)).Cell(Significant(interval?.Low))
            .Cell(Significant(interval?.High));
        rows.Cell(ResultNumber.Level(line?.ResidualDb)).Cell(ResultNumber.Probability(straight));
    }

    // A slope for each of thousands of folds is a small number.
    private static string Significant(double? value) => value?.ToString("G8", CultureInfo.InvariantCulture) ?? "";
}
