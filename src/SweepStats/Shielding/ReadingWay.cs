using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>One way in which readings may have come about: what noise is taken out, and with which limits.</summary>
/// <param name="Noise">How noise reads.</param>
/// <param name="Law">How it is taken out.</param>
/// <param name="Interval">The interval that belongs to the law, for a confidence and the covered readings.</param>
internal sealed record ReadingWay(DetectorNoise Noise, ILevelLaw Law, Func<Confidence, CoveredReadings,
    IReadingInterval> Interval)
{
    /// <summary>
    /// The ways that a noise leaves possible: one where looks are averaged; where one of several is kept, the two ends.
    /// </summary>
    public static ImmutableArray<ReadingWay> Of(DetectorNoise noise) => noise is HeldNoise held
        ? [Held(held, most: false), Held(held, most: true)]
        : [new(noise, new AveragedLaw(noise), (confidence, covered) => new ShieldingInterval(noise, confidence, covered))];

    private static ReadingWay Held(HeldNoise noise, bool most) =>
        new(noise, new HeldLaw(noise, most), (confidence, covered) => new HeldInterval(noise, most, confidence, covered));
}
