using System.Collections.Immutable;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Shielding;

/// <summary>Shielding of one specimen over frequency. Immutable.</summary>
public sealed record ShieldingCurve
{
    /// <summary>Which specimen.</summary>
    public required SpecimenName Name { get; init; }

    /// <summary>One reading a frequency, in grid order.</summary>
    public required ImmutableArray<ShieldingReading> Readings { get; init; }

    /// <summary>Covered sweeps used.</summary>
    public required int SweepCount { get; init; }

    /// <summary>Placements noted; null where the campaign does not name them.</summary>
    public required int? PlacementCount { get; init; }

    /// <summary>Typical scatter between sweeps of one placement in dB; null where no placement has two sweeps.</summary>
    public required double? RepeatabilityDb { get; init; }

    /// <summary>Standard deviation of the display's rounding in dB, the larger of reference and covered; 0 where levels come with all digits.</summary>
    public double RoundingDb { get; init; }

    /// <summary>The levels behind the readings, for limits of another confidence.</summary>
    internal CurveLevels? Levels { get; init; }

    /// <summary>What each repeat contributes, for figures over the band.</summary>
    internal CurveSpread? Spread { get; init; }

    /// <summary>Ends of the two-sided interval at a frequency, for any confidence: the one way to limits of a curve, which knows what each reading is.</summary>
    /// <remarks>Nothing is claimed of an unreadable frequency, and nothing from above where only a bound is known.</remarks>
    /// <param name="f">Place of the frequency.</param>
    /// <param name="estimators">Those of the confidence that is wanted, from <see cref="Levels"/>.</param>
    /// <param name="plainReference">
    /// The noise is not taken out where the reference hardly rises over the floor either: figures over a band take such readings as they come, which bounds them lower.
    /// </param>
    internal Interval Ends(int f, ImmutableArray<ReadingEstimator> estimators, bool plainReference = false)
    {
        ShieldingReading reading = Readings[f];
        if (Levels is null || reading is ShieldingReading.Unreadable)
        {
            return new Interval(double.NegativeInfinity, double.PositiveInfinity);
        }

        // What transmits is no noise, and without a floor nobody knows the noise: neither is taken out of the reading, and no upper end is left.
        bool plain = !Levels.FloorKnown || reading.Evidence.Ambient || (plainReference && reading.Evidence.ReferenceInFloor);
        EnvelopeLimits limits = EnvelopeLimits.Of(Levels[f], estimators, !plain, repeated: false);
        return new Interval(limits.LowDb, reading is ShieldingReading.Measured && !plain ? limits.HighDb : double.PositiveInfinity);
    }
}
