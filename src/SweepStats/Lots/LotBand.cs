using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>How lots compare over one band. Immutable.</summary>
public sealed record LotBand
{
    /// <summary>The user's name of the band; null for the whole analysed one.</summary>
    public required string? Name { get; init; }

    /// <summary>First to last frequency of it.</summary>
    public required FrequencyBand Band { get; init; }

    /// <summary>
    /// Share of the band, in log frequency, where every specimen is bounded from both sides: all figures of the band are of this
    /// part.
    /// </summary>
    public required double ClearShare { get; init; }

    /// <summary>
    /// Half-width in dB, at the level of the intervals, of what all specimens share: the errors of reference and floor and what
    /// is stated. It drops out of comparisons and is in the intervals and promises of lots; null where the reference does not
    /// repeat.
    /// </summary>
    public required double? SharedErrorDb { get; init; }

    /// <summary>Lots in their order.</summary>
    public required ImmutableArray<LotSummary> Lots { get; init; }

    /// <summary>Specimens by lot and name.</summary>
    public required ImmutableArray<SpecimenMean> Specimens { get; init; }

    /// <summary>Every two lots of two specimens and more.</summary>
    public required ImmutableArray<LotPair> Pairs { get; init; }

    /// <summary>
    /// Names of the lots that cannot be told from the best, the highest mean first: all where the lots are not shown to differ,
    /// and each of which the floor may hide more somewhere in the band. The best is among them with the confidence of the
    /// question. Empty where no lot has two specimens, or no part of the band is clear.
    /// </summary>
    public required ImmutableArray<string> Foremost { get; init; }

    /// <summary>Whether lots are alike over the clear part, as whole curves; null where too few specimens tell.</summary>
    public required CurveAnova? Curves { get; init; }

    /// <summary>
    /// Probability of lots that differ this much somewhere in the band where they are alike: that from the curves over the clear
    /// part and that from the single frequencies, which capped specimens take part in too, combined
    /// (<see cref="CombinedTests"/>). Null where too few specimens tell.
    /// </summary>
    public required double? Probability { get; init; }

    /// <summary>Scatter of the mean over the clear part by level, outermost first; empty where nothing repeats.</summary>
    public required ImmutableArray<LevelDeviation> Scatter { get; init; }

    /// <summary>
    /// Intraclass correlation: the share that lots have of the variance between specimens of different lots, 0 where lots do not
    /// differ, near 1 where only they do; null where lots or specimens do not repeat.
    /// </summary>
    public double? IntraclassCorrelation
    {
        get
        {
            double? Variance(VarianceLevel level) =>
                Scatter.Where(s => s.Level == level).Select(s => (double?)(s.DeviationDb * s.DeviationDb)).FirstOrDefault();
            return Variance(VarianceLevel.Lot) is { } lots && Variance(VarianceLevel.Specimen) is { } specimens
                && lots + specimens > 0 ? lots / (lots + specimens) : null;
        }
    }

    /// <summary>How each specimen stands to the others; null for fewer than three, or without repeats.</summary>
    public required GroupStanding? SpecimenStanding { get; init; }

    /// <summary>How each lot stands to the others; null for fewer than three, or where no lot has two specimens.</summary>
    public required GroupStanding? LotStanding { get; init; }

    /// <summary>
    /// Lots and specimens over time, as far as there are enough of them; in the order of the campaign where times are not noted.
    /// </summary>
    public required ImmutableArray<ControlChart> OverTime { get; init; }
}
