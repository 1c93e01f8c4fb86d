using SweepStats.Alignment;
using SweepStats.Sweeps;

namespace SweepStats.Floor;

/// <summary>
/// How floor readings lean, held against what averages and the highest of several looks do at the same scatter. Immutable.
/// </summary>
/// <remarks>
/// Readings are taken about the floor as it is pooled over frequency, sweep offsets taken out and frequencies left out that hold
/// more than noise. A residual about a mean of n readings has (n−1)/n of their variance and (n−1)(n−2)/n² of their third
/// cumulant. Averages in dB have the third cumulant −0.889·κ₂² (nepers of power), averages in power a little less; so anything
/// over it is no average. The highest of N looks leans by the cumulants of
/// <see cref="HeldLooks"/>. The error of κ₃ less what κ₂ lets expect follows from the cumulants up to the sixth, for as many
/// independent readings as the
/// correlation between neighbours leaves: var κ₃ = (κ₆ + 9κ₄κ₂ + 9κ₃² + 6κ₂³)/n, cov(κ₂, κ₃) = (κ₅ + 6κ₃κ₂)/n,
/// var κ₂ = (κ₄ + 2κ₂²)/n. Source: Kendall and Stuart, The Advanced Theory of Statistics I, 12 (k-statistics; from memory);
/// measured in reports/coverage/study.md.
/// </remarks>
public sealed record FloorSkewness
{
    // One-sided normal quantiles: 0.1 % to be sure; 1 % of averages upward and 2.3 % downward, where claims come out too high,
    // that are no longer called so; 1 % of kept looks that may be taken for averages.
    private const double Recognised = 3.09;
    private const double Doubtful = 2.33;
    private const double DoubtfulBelow = 2;
    private const double Missed = 2.33;

    // Of few readings the skewness has longer tails than its standard error tells: 0.3 % lay beyond the quantile with 200 of
    // them.
    private const double LongerTail = 120;

    // Downward the tail is longer still.
    private const double RecognisedBelow = 4;
    private const double FewestBelow = 400;

    // Half way from the highest of two looks, 3.6 dB, to a single one, of which none is kept. What scatters more is a single
    // look, or no noise.
    private const double MostDeviationDb = 4.4;

    // Skewness of fewer is too far from normal to be judged by its standard error.
    private const double FewestReadings = 100;

    // The highest of some 30 000 single looks scatters by half a decibel. Less is that of looks which were smoothed before or
    // after one was kept, as by a quasi-peak detector, and their shape is anybody's guess.
    private const double LeastDeviationDb = 0.5;

    /// <summary>
    /// Skewness of a reading, corrected for the means it is taken about; not a number where there are too few to tell.
    /// </summary>
    public required double Skewness { get; init; }

    /// <summary>Skewness of averages in dB that scatter alike: no average leans less far down.</summary>
    public required double OfLogAverages { get; init; }

    /// <summary>Skewness of averages in power that scatter alike: no average leans further down.</summary>
    public required double OfPowerAverages { get; init; }

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
        ShapeCumulants averages = ShapeCumulants.LogAverages(seen.Second), highest = ShapeCumulants.Highest(seen.Second);
        double error = averages.ErrorOfThird(seen.Readings), power = ShapeCumulants.ThirdOfPowerAverages(seen.Second);
        var away = new Distances(
            (seen.Third - averages.Third) / error, (seen.Third - power) / error,
            (seen.Third - highest.Third) / highest.ErrorOfThird(seen.Readings));
        bool judged = seen.Readings >= FewestReadings && seen.Second > 0;
        double scale = Math.Pow(seen.Second, 1.5);
        return new FloorSkewness
        {
            Skewness = judged ? seen.Third / scale : double.NaN,
            OfLogAverages = averages.Third / scale,
            OfPowerAverages = power / scale,
            OfHighest = highest.Third / scale,
            StandardError = error / scale,
            Readings = seen.Readings,
            Shape = judged && Resolved(floor, DeviationDb(seen)) ? Told(away, seen) : NoiseShape.Untold,
        };
    }

    // A step of the display as coarse as the scatter makes a shape of its own.
    private static bool Resolved(SweepBlock floor, double deviationDb) =>
        deviationDb >= DisplayStep.Of(floor) && deviationDb < MostDeviationDb;

    private static NoiseShape Told(Distances away, FloorCumulants seen) =>
        away.FromLog > Recognised + (LongerTail / seen.Readings) ? NoiseShape.Highest
        : away.FromPower < -RecognisedBelow && seen.Readings >= FewestBelow ? NoiseShape.Lowest
        : DeviationDb(seen) >= LeastDeviationDb && Between(away) && away.FromHighest < -Missed ? NoiseShape.Averages
        : NoiseShape.Untold;

    private static bool Between(Distances away) => away.FromLog < Doubtful && away.FromPower > -DoubtfulBelow;

    private static double DeviationDb(FloorCumulants seen) => DetectorNoise.DecibelsPerNeper * Math.Sqrt(seen.Second);

    /// <summary>How far the third cumulant lies over that of each kind of detector, in standard errors.</summary>
    private readonly record struct Distances(double FromLog, double FromPower, double FromHighest);
}
