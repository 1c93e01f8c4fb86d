using System.Collections.Immutable;
using System.Text.Json;
using SweepStats.Bands;
using SweepStats.Lots;
using SweepStats.Statistics;

namespace SweepStats.Files.Results;

/// <summary>
/// How lots of several campaigns compare, as JSON; decibels unless the name says otherwise, null where there is no figure.
/// </summary>
public static class TogetherJson
{
    /// <summary>Writes the members of an object that is open.</summary>
    public static void Write(Utf8JsonWriter json, LotHistory history)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(history);
        json.Band(history.Band);
        json.WriteNumber("points", history.PointCount);
        json.Number("clear_share", history.ClearShare);
        // Of every low and high of a difference.
        json.Number("difference_level", history.Question.Confidence.Level);
        Stretches(json, history.Stretches);
        Lots(json, history.Lots);
        Pairs(json, history.Pairs, history.Question);
        Bands(json, history);
        ByFrequency(json, history);
        LotsJson.OverTime(json, history.OverTime);
    }

    private static void Stretches(Utf8JsonWriter json, ImmutableArray<HistoryStretch> stretches) =>
        json.Objects("stretches", stretches, stretch =>
    {
        Names(json, stretch.First, stretch.Second);
        json.Band(stretch.Band);
        json.WriteNumber("frequencies", stretch.Frequencies);
        json.WriteNumber("hidden_frequencies", stretch.Hidden);
        json.Number("difference_db", stretch.ApartDb);
    });

    private static void Lots(Utf8JsonWriter json, ImmutableArray<HistoryLot> lots) => json.Objects("lots", lots, lot =>
    {
        json.WriteString("campaign", lot.Campaign);
        LotsJson.Lot(json, lot.Figures);
    });

    private static void Pairs(Utf8JsonWriter json, ImmutableArray<HistoryPair> pairs, LotQuestion question) =>
        json.Objects("pairs", pairs, pair =>
    {
        Names(json, pair.First, pair.Second);
        Interval? interval = pair.Tested?.Interval(question.FalseAlarm / 2);
        json.Figure("difference_db",
            pair.Tested is { } tested ? new BandFigure(tested.Difference, interval?.Low, interval?.High) : null);
        json.Number("within_db", question.MarginDb);
        json.Number("p_not_within", pair.Tested?.Probability);
        json.Number("p_of_means", pair.Tested?.ProbabilityAlike);
        json.Number("p_adjusted", pair.Adjusted);
    });

    private static void Bands(Utf8JsonWriter json, LotHistory history)
    {
        json.Objects("bands", history.Bands, band =>
        {
            json.WriteString("name", band.Name);
            json.Band(band.Band);
            json.Number("clear_share", band.ClearShare);
            Lots(json, band.Lots);
            Pairs(json, band.Pairs, history.Question);
        });
        json.Objects("bands_not_compared", history.BandsLeftOut, band =>
        {
            json.WriteString("name", band.Name);
            json.WriteString("because", band.LimitsDiffer ? "limits-differ" : "no-frequency");
            json.Objects("limits", band.Of, of =>
            {
                json.WriteString("campaign", of.Campaign);
                json.Band(of.Limits);
            });
        });
    }

    // Pairs by their place in "pairs": names at each frequency would be most of the file.
    private static void ByFrequency(Utf8JsonWriter json, LotHistory history) =>
        json.Objects("by_frequency", Enumerable.Range(0, history.PointCount), f =>
    {
        json.WriteNumber("frequency_hz", history.Frequencies[f].Value);
        json.Objects("pairs", Enumerable.Range(0, history.Pairs.Length), pair =>
        {
            HistoryPoint point = history.Pairs[pair].Points[f];
            Interval? interval = point.Interval(history.Question.Confidence);
            json.WriteNumber("pair", pair);
            json.Figure("difference_db",
                double.IsFinite(point.DifferenceDb) ? new BandFigure(point.DifferenceDb, interval?.Low, interval?.High) : null);
            json.Number("p", point.Probability);
            json.Number("p_adjusted", point.Adjusted);
            json.WriteBoolean("differ", history.DifferAt(history.Pairs[pair], point));
            json.WriteNumber("capped_first", point.CappedFirst);
            json.WriteNumber("capped_second", point.CappedSecond);
        });
    });

    private static void Names(Utf8JsonWriter json, HistoryLot first, HistoryLot second)
    {
        json.WriteString("first_campaign", first.Campaign);
        json.WriteString("first", first.Figures.Lot);
        json.WriteString("second_campaign", second.Campaign);
        json.WriteString("second", second.Figures.Lot);
    }
}
