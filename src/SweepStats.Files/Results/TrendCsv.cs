using System.Globalization;
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

        TrendBands(rows, trend);
        Values(rows, trend, result);
        Frequencies(rows, trend);
    }

    private static void TrendBands(CsvRows rows, FactorTrend trend)
    {
        foreach (TrendBand band in trend.Bands)
        {
            rows.Cell("band").Text(band.Name).Band(band.Band).Text(trend.Factor);
            rows.Cell("").Count(trend.Specimens.Length).Cell("").Level(band.ClearShare).Cell("");
            Line(rows, band.Line, band.WithinLots, band.Line?.StraightProbability);
            rows.Empty(4).Exact(trend.Confidence.Level).End();
        }
    }

    private static void Values(CsvRows rows, FactorTrend trend, AnalysisResult result)
    {
        foreach (FactorGroup group in trend.Groups)
        {
            rows.Cell("value").Empty(3).Text(trend.Factor).Exact(group.Value);
            rows.Count(group.Specimens).Level(group.MeanDb).Empty(10);
            rows.Cell(SummaryJson.Outcome(result.Verdict.Relied(group.Outcome)) ?? "");
            rows.Exact(result.Plan.Rule?.Level.Level).End();
        }
    }

    private static void Frequencies(CsvRows rows, FactorTrend trend)
    {
        foreach (TrendFrequency at in trend.Frequencies)
        {
            rows.Cell("frequency").Text(null).Exact(at.At.Value).Exact(at.At.Value).Text(trend.Factor);
            rows.Cell("").Count(trend.Specimens.Length).Empty(2).Count(at.Capped);
            Line(rows, at.Line, null, at.StraightAdjusted);
            rows.Cell(TrendJson.Basis(at.Basis)).Cell(Significant(at.MetUpTo)).Cell(Significant(at.NotMetFrom));
            rows.Cell("").Exact(trend.Confidence.Level).End();
        }
    }

    private static void Line(CsvRows rows, TrendLine? line, TrendSlope? within, double? straight)
    {
        Interval? interval = within?.IntervalDb ?? line?.SlopeIntervalDb;
        rows.Cell(Significant(within?.SlopeDb ?? line?.SlopeDb));
        rows.Cell(Significant(interval?.Low)).Cell(Significant(interval?.High));
        rows.Level(line?.ResidualDb).Probability(straight);
    }

    // A slope for each of thousands of folds is a small number.
    private static string Significant(double? value) => value?.ToString("G8", CultureInfo.InvariantCulture) ?? "";
}
