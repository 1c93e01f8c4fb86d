using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Choice;

/// <summary>How one specimen stands in one band. Immutable.</summary>
public sealed record RankedSpecimen
{
    /// <summary>Which specimen.</summary>
    public required SpecimenName Name { get; init; }

    /// <summary>
    /// Place among the candidates by the lower limit of the mean, from 1; 0 for the yardstick, and where nobody may be ranked.
    /// </summary>
    public int Rank { get; init; }

    /// <summary>Mean shielding over the compared part of the band, with the interval that can be claimed.</summary>
    public required BandFigure MeanDb { get; init; }

    /// <summary>"At least this much at every frequency of the band"; null where some frequency allows no limit.</summary>
    public required Decibels? AtLeast { get; init; }

    /// <summary>Frequencies of the band where the floor leaves a lower bound at best.</summary>
    public required int CappedCount { get; init; }

    /// <summary>Frequencies of the band where an overloaded receiver leaves a lower bound at best.</summary>
    public int OverloadedCount { get; init; }

    /// <summary>Its mean over the compared part is known from below only: it may be the best whatever the others do.</summary>
    public required bool Open { get; init; }

    /// <summary>Standard deviation of one repeat of the mean, as compared; null where no specimen is repeated.</summary>
    public required double? DeviationDb { get; init; }

    /// <summary>
    /// Group from 1: its members cannot be told from the best among those that no earlier group holds. Group 1 holds the truly
    /// best one at the level of the analysis. Null where nothing repeats.
    /// </summary>
    public int? Group { get; init; }

    /// <summary>
    /// Between which limits the probability of being the best of the candidates lies: both ends are the probability itself where
    /// all are bounded from both sides; null where nothing repeats, or where specimens were not taken off and put back.
    /// </summary>
    public Interval? ProbabilityBest { get; init; }

    /// <summary>How much less than the yardstick it shields; null without one.</summary>
    public BandFigure? BelowYardstickDb { get; init; }
}

/// <summary>The candidates in one band, best claim first. Immutable.</summary>
public sealed record BandRanking
{
    /// <summary>The user's name of the band; null for the whole analysed one.</summary>
    public required string? Name { get; init; }

    /// <summary>First to last frequency of it.</summary>
    public required FrequencyBand Band { get; init; }

    /// <summary>Frequencies of it that are compared.</summary>
    public required int PointCount { get; init; }

    /// <summary>
    /// Frequencies left out for all, since something else transmits there or the reference does not rise over the floor.
    /// </summary>
    public required int LeftOut { get; init; }

    /// <summary>Frequencies left out for all, since a candidate is known from below only there.</summary>
    public required int CappedLeftOut { get; init; }

    /// <summary>Those of <see cref="CappedLeftOut"/> at which the receiver was overloaded.</summary>
    public int OverloadedLeftOut { get; init; }

    /// <summary>
    /// The candidates by group, within one by the lower limit of their mean; those of which nothing is known come last. By lot
    /// and name where nobody may be ranked.
    /// </summary>
    public required ImmutableArray<RankedSpecimen> Ranking { get; init; }

    /// <summary>The yardstick; null without one.</summary>
    public required RankedSpecimen? Yardstick { get; init; }

    /// <summary>Groups there are; 0 where nothing repeats.</summary>
    public int GroupCount => Ranking.Max(r => r.Group) ?? 0;

    /// <summary>The same figures by lot and name, with nobody before another.</summary>
    internal BandRanking Unranked() => this with
    {
        Ranking = [.. Ranking.OrderBy(r => r.Name).Select(r => r with { Rank = 0, Group = null, ProbabilityBest = null })],
    };
}
