namespace SweepStats.Floor;

/// <summary>Between which limits the scatter lies that a floor of single looks shows.</summary>
/// <remarks>
/// Few readings show their scatter badly, those of single looks worse than normal ones: the excess of a log-exponential reading
/// is 12/5. From J sweeps of F frequencies ln s has the variance (2/(J − 1) + 2.4/J)/(4F); from one sweep, judged by neighbours,
/// about 2/F, for neighbours share readings and their correlation is estimated from the same sweep. Limits lie three standard
/// deviations off. Assumes independent frequencies. Source: variance of a sample variance, for example Stuart and Ord 1994, 10.5
/// (from memory); for one sweep worked out here for second differences.
/// </remarks>
internal static class SingleLookScatter
{
    private const double Excess = 2.4;
    private const double OfOneSweep = 2;
    private const double Deviations = 3;

    // With fewer frequencies offsets of sweeps cannot be told from scatter.
    private const int FewestPoints = 8;

    /// <summary>Standard deviation of one reading of a single look, in dB.</summary>
    public static double Db { get; } = new DetectorNoise(1).LogStandardDeviation;

    // Single looks scatter by 5.57 dB whatever the receiver; two looks in one reading by 3.5 dB: about half way there.
    private const double LeastOfSingleLooks = 0.8;

    /// <summary>What the readings of a measured floor have to scatter by at least to be single looks, in dB.</summary>
    public static double Least(NoiseFloor floor) => Math.Min(LeastOfSingleLooks * Db, Limits(floor).Low);

    /// <summary>A measured floor scatters by less than single looks do.</summary>
    public static bool Contradicts(NoiseFloor floor) => floor.Source == FloorSource.Measured
        && floor.ReadingDeviationDb < Least(floor);

    /// <summary>A measured floor scatters as single looks do.</summary>
    public static bool Agrees(NoiseFloor floor) =>
        floor.Source == FloorSource.Measured && !Contradicts(floor) && floor.ReadingDeviationDb <= Limits(floor).High;

    /// <summary>
    /// Lowest and highest standard deviation in dB that chance explains; 0 and infinity where the floor has too few frequencies
    /// to tell.
    /// </summary>
    public static (double Low, double High) Limits(NoiseFloor floor)
    {
        int points = floor.Ambient.Count(ambient => !ambient);
        if (points < FewestPoints)
        {
            return (0, double.PositiveInfinity);
        }

        double sweeps = floor.SweepCount;
        double variance = sweeps > 1 ? ((2 / (sweeps - 1)) + (Excess / sweeps)) / (4 * points) : OfOneSweep / points;
        double apart = Math.Exp(Deviations * Math.Sqrt(variance));
        return (Db / apart, Db * apart);
    }
}
