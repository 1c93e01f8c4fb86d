using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Leakage;

/// <summary>How high the leakage behind a plate may be, for one way of averaging.</summary>
/// <remarks>
/// The level is what the noise curve makes of the plate's rise over the floor. Chance is what noise does to the mean of so many
/// readings, less the higher the leakage stands over it. Each frequency speaks for itself: a leakage by several ways differs from
/// one to the next, and neighbours that show none say little of it. Assumes a plate read with the settings of the floor. Source:
/// <see cref="DetectorNoise"/>; its coverage stands in reports/benches/study.md.
/// </remarks>
/// <param name="noise">The detector's noise.</param>
/// <param name="floor">The floor.</param>
/// <param name="sweeps">Plate sweeps.</param>
internal sealed class PlateReadings(DetectorNoise noise, NoiseFloor floor, int sweeps)
{
    // From this limit down to the standard error by the normal quantile: the skewness of few looks is in it.
    private static readonly double Probability = Confidence.NinetyFive.TwoSidedQuantile;

    private readonly double _criticalRise = noise.CriticalRise(sweeps, Probability);
    private readonly double _noiseVariance = noise.LogCumulants(double.NegativeInfinity).Variance;

    /// <summary>The leakage at a frequency.</summary>
    /// <param name="plate">Mean level in dB of the plate sweeps.</param>
    /// <param name="f">Place of the frequency.</param>
    public LeakageLevel At(double plate, int f)
    {
        // The floor may lie lower than where it was measured, and then the plate rises more.
        double at = floor.LevelDb[f] - floor.HalfWidthDb;
        double rise = Math.Max(0, plate - at);
        double error = StudentQuantile.Of(Probability).At(floor.DegreesOfFreedom[f]) * floor.StandardErrorDb[f];
        double estimate = LevelDb(at, rise);
        double limit = LevelDb(at, rise + double.Hypot(Chance(rise), error));
        double power = (Math.Pow(10, limit / 10) - Math.Pow(10, estimate / 10)) / StudentQuantile.Of(Probability).Normal;
        return new LeakageLevel(estimate, 10 * Math.Log10(power));
    }

    private double LevelDb(double at, double rise) => at - noise.LogMeanOffset + noise.StrongestSnrInDecibels(rise);

    private double Chance(double rise) => _noiseVariance == 0 ? 0
        : _criticalRise * Math.Sqrt(noise.LogCumulants(noise.SnrInDecibels(rise)).Variance / _noiseVariance);
}
