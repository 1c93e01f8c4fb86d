using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Floor;

/// <summary>How floor readings lean, held against what averages and the highest of several looks do at the same scatter. Immutable.</summary>
/// <remarks>
/// Readings are taken about the floor as it is pooled over frequency, sweep offsets taken out and frequencies left out that hold more than noise. A
/// residual about a mean of n readings has (n−1)/n of their variance and (n−1)(n−2)/n² of their third cumulant. Averages in dB have the third cumulant
/// −0.889·κ₂² (nepers of power), averages in power a little less; so anything over it is no average. The highest of N looks leans by the cumulants of
/// <see cref="HeldLooks"/>. The error of κ₃ less what κ₂ lets expect follows from the cumulants up to the sixth, for as many independent readings as the
/// correlation between neighbours leaves: var κ₃ = (κ₆ + 9κ₄κ₂ + 9κ₃² + 6κ₂³)/n, cov(κ₂, κ₃) = (κ₅ + 6κ₃κ₂)/n, var κ₂ = (κ₄ + 2κ₂²)/n.
/// Source: Kendall and Stuart, The Advanced Theory of Statistics I, 12 (k-statistics; from memory); measured in DEVELOPERS.md.
/// </remarks>
public sealed record FloorSkewness
{
    /// <summary>Chance of taking averages for kept looks.</summary>
    public const double FalseAlarm = 0.001;

    // One-sided normal quantiles: 0.1 %; 1 % beyond which averages are no longer called so; 5 % of kept looks that may be taken for averages.
    private const double Recognised = 3.09;
    private const double Doubtful = 2.33;
    private const double Missed = 1.645;

    // Skewness of fewer is too far from normal to be judged by its standard error.
    private const double FewestReadings = 100;

    // The highest of 20 000 single looks scatters by half a decibel. Less is that of looks which were smoothed before or after one was kept, as by a
    // quasi-peak detector, and their shape is anybody's guess.
    private const double LeastDeviationDb = 0.5;

    /// <summary>Skewness of a reading, corrected for the means it is taken about.</summary>
    public required double Skewness { get; init; }

    /// <summary>Skewness of averages that scatter alike, at most.</summary>
    public required double OfAverages { get; init; }

    /// <summary>Skewness of the highest of several looks that scatter alike.</summary>
    public required double OfHighest { get; init; }

    /// <summary>Standard error of the skewness less that of averages, if the readings are averages.</summary>
    public required double StandardError { get; init; }

    /// <summary>Independent readings behind it.</summary>
    public required double Readings { get; init; }

    /// <summary>What it tells.</summary>
    public required NoiseShape Shape { get; init; }

    /// <summary>Looks at the floor sweeps.</summary>
    public static FloorSkewness Of(SweepBlock floor)
    {
        ArgumentNullException.ThrowIfNull(floor);
        FloorCumulants seen = FloorCumulants.Of(floor, NoiseFloorEstimator.Split(floor, Averaging.Unknown));
        ShapeCumulants averages = ShapeCumulants.Averages(seen.Second), highest = ShapeCumulants.Highest(seen.Second);
        double scale = Math.Pow(seen.Second, 1.5);
        double overAverages = (seen.Third - averages.Third) / averages.ErrorOfThird(seen.Readings);
        double overHighest = (seen.Third - highest.Third) / highest.ErrorOfThird(seen.Readings);
        bool judged = seen.Readings >= FewestReadings && seen.Second > 0;
        // A step of the display as coarse as the scatter makes a shape of its own.
        double deviation = DetectorNoise.DecibelsPerNeper * Math.Sqrt(seen.Second);
        bool resolved = judged && deviation >= Math.Max(LeastDeviationDb, DisplayStep.Of(floor));
        return new FloorSkewness
        {
            Skewness = judged ? seen.Third / scale : double.NaN,
            OfAverages = averages.Third / scale,
            OfHighest = highest.Third / scale,
            StandardError = averages.ErrorOfThird(seen.Readings) / scale,
            Readings = seen.Readings,
            Shape = judged && deviation >= DisplayStep.Of(floor) && overAverages > Recognised ? NoiseShape.Highest
                : resolved && overAverages < Doubtful && overHighest < -Missed ? NoiseShape.Averages
                : NoiseShape.Untold,
        };
    }
}
