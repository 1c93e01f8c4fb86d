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
        json.WriteNumber("start_hz", history.Band.Start.Value);
        json.WriteNumber("stop_hz", history.Band.Stop.Value);
        json.WriteNumber("points", history.PointCount);
        SummaryPlan.Number(json, "clear_share", history.ClearShare);
        // Of every low and high of a difference.
        SummaryPlan.Number(json, "difference_level", history.Question.Confidence.Level);
        Stretches(json, history.Stretches);
        Lots(json, history.Lots);
        Pairs(json, history.Pairs, history.Question);
        Bands(json, history);
        ByFrequency(json, history);
        LotsJson.OverTime(json, history.OverTime);
    }

    private static void Stretches(Utf8JsonWriter json, ImmutableArray<HistoryStretch> stretches) =>
        All(json, "stretches", stretches, stretch =>
    {
        Names(json, stretch.First, stretch.Second);
        json.WriteNumber("start_hz", stretch.Band.Start.Value);
        json.WriteNumber("stop_hz", stretch.Band.Stop.Value);
        json.WriteNumber("frequencies", stretch.Frequencies);
        json.WriteNumber("hidden_frequencies", stretch.Hidden);
        SummaryPlan.Number(json, "difference_db", stretch.ApartDb);
    });

    private static void Lots(Utf8JsonWriter json, ImmutableArray<HistoryLot> lots) => All(json, "lots", lots, lot =>
    {
        json.WriteString("campaign", lot.Campaign);
        LotsJson.Lot(json, lot.Figures);
    });

    private static void Pairs(Utf8JsonWriter json, ImmutableArray<HistoryPair> pairs, LotQuestion question) =>
        All(json, "pairs", pairs, pair =>
    {
        Names(json, pair.First, pair.Second);
        Interval? interval = pair.Tested?.Interval(question.FalseAlarm / 2);
        SummaryFigures.Figure(json, "difference_db",
            pair.Tested is { } tested ? new BandFigure(tested.Difference, interval?.Low, interval?.High) : null);
        SummaryPlan.Number(json, "within_db", question.MarginDb);
        SummaryPlan.Number(json, "p_not_within", pair.Tested?.Probability);
        SummaryPlan.Number(json, "p_of_means", pair.Tested?.ProbabilityAlike);
        SummaryPlan.Number(json, "p_adjusted", pair.Adjusted);
    });

    private static void Bands(Utf8JsonWriter json, LotHistory history)
    {
        All(json, "bands", history.Bands, band =>
        {
            json.WriteString("name", band.Name);
            json.WriteNumber("start_hz", band.Band.Start.Value);
            json.WriteNumber("stop_hz", band.Band.Stop.Value);
            SummaryPlan.Number(json, "clear_share", band.ClearShare);
            Lots(json, band.Lots);
            Pairs(json, band.Pairs, history.Question);
        });
        All(json, "bands_not_compared", history.BandsLeftOut, band =>
        {
            json.WriteString("name", band.Name);
            json.WriteString("because", band.LimitsDiffer ? "limits-differ" : "no-frequency");
            All(json, "limits", band.Of, of =>
            {
                json.WriteString("campaign", of.Campaign);
                json.WriteNumber("start_hz", of.Limits.Start.Value);
                json.WriteNumber("stop_hz", of.Limits.Stop.Value);
            });
        });
    }

    // Pairs by their place in "pairs": names at each frequency would be most of the file.
    private static void ByFrequency(Utf8JsonWriter json, LotHistory history) =>
        All(json, "by_frequency", Enumerable.Range(0, history.PointCount), f =>
    {
        json.WriteNumber("frequency_hz", history.Frequencies[f].Value);
        All(json, "pairs", Enumerable.Range(0, history.Pairs.Length), pair =>
        {
            HistoryPoint point = history.Pairs[pair].Points[f];
            Interval? interval = point.Interval(history.Question.Confidence);
            json.WriteNumber("pair", pair);
            SummaryFigures.Figure(json, "difference_db",
                double.IsFinite(point.DifferenceDb) ? new BandFigure(point.DifferenceDb, interval?.Low, interval?.High) : null);
            SummaryPlan.Number(json, "p", point.Probability);
            SummaryPlan.Number(json, "p_adjusted", point.Adjusted);
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

    private static void All<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> members)
    {
        json.WriteStartArray(name);
        foreach (T item in items)
        {
            json.WriteStartObject();
            members(item);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
