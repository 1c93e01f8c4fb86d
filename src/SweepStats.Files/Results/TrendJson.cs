using System.Text.Json;
using SweepStats.Files.Summaries;
using SweepStats.Trends;
using SweepStats.Verdicts;
using static SweepStats.Files.Results.ResultNumber;

namespace SweepStats.Files.Results;

/// <summary>
/// The trend along an ordered factor as JSON; decibels unless the name says otherwise, null where there is no figure.
/// </summary>
internal static class TrendJson
{
    /// <summary>What is written; null where no factor is named.</summary>
    public static SummaryTrend? Of(FactorTrend? trend, Verdict verdict) => trend is null ? null : new(
        trend.Factor, trend.Confidence.Level, trend.Specimens.Length, Lacking(trend.Lack), Requirement(trend.Requirement),
        [.. trend.Groups.Select(group => Value(group, trend.Requirement is null ? null : verdict.Relied(group.Outcome)))],
        [.. trend.Bands.Select(Band)]);

    /// <summary>What a frequency is held against the requirement by.</summary>
    public static string Basis(TrendBasis basis) => basis switch
    {
        TrendBasis.Line => "line",
        TrendBasis.Groups => "groups",
        _ => "nothing",
    };

    private static string? Lacking(TrendLack lack) => lack switch
    {
        TrendLack.Values => "values",
        TrendLack.Specimens => "specimens",
        _ => null,
    };

    private static SummaryTrendRequirement? Requirement(TrendRequirement? asked) => asked is null ? null : new(
        asked.Rule.Level.Level, "mean-of-specimens-at-every-frequency",
        MetUpTo: Finite(asked.MetUpTo),
        NotMetFrom: Finite(asked.NotMetFrom),
        asked.Frequencies, asked.ByGroups, asked.Hidden, Finite(asked.DecidedAt?.Value),
        asked.Obstacle == TrendObstacle.None ? null : JsonNamingPolicy.KebabCaseLower.ConvertName(asked.Obstacle.ToString()),
        asked.OverturnedBy);

    private static SummaryTrendValue Value(FactorGroup group, RequirementOutcome? outcome) =>
        new(group.Value, group.Specimens, Finite(group.MeanDb), SummaryJson.Outcome(outcome));

    private static SummaryTrendBand Band(TrendBand band) => new(
        band.Name, band.Band.Start.Value, band.Band.Stop.Value, Finite(band.ClearShare), Slope(band), band.WithinLots is not null,
        SdDb: Finite(band.Line?.ResidualDb),
        PStraight: Finite(band.Line?.StraightProbability),
        band.IsStraight,
        PLotsApart: Finite(band.LotsApartProbability));

    private static Estimate? Slope(TrendBand band) => band.WithinLots is { } within
        ? Estimate.Of(within.SlopeDb, within.IntervalDb)
        : band.Line is { } line ? Estimate.Of(line.SlopeDb, line.SlopeIntervalDb) : null;
}
