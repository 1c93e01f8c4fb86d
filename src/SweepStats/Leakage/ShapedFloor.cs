using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Leakage;

/// <summary>Recognises floor sweeps without phase that show a steady signal instead of noise.</summary>
/// <remarks>
/// Two signs. Scatter: a steady signal of level x dB in noise scatters by 6.14·10^((N − x)/20) dB, so that the logarithm of its
/// variance falls by ln(10)/10 for each dB that its level rises over frequency; noise scatters alike wherever its level is.
/// Structure: the sum of several ways has a level that jumps about over few neighbouring frequencies, far beyond what its repeats
/// allow; a receiver's own noise slopes and ripples by a decibel or so. One sweep shows neither. Source: small-noise limit of the
/// Rice distribution (common knowledge of the trade); the false alarms and misses are in the study of benches.
/// </remarks>
internal sealed class ShapedFloor
{
    // With fewer frequencies neither sign can be told.
    private const int FewestPoints = 20;

    // Slope of ln(variance) over level in dB for a signal in noise; half of it parts signal from noise.
    private const double SignalSlope = -0.2302585092994046;

    // One-sided score: 3·10⁻⁴ of clean floors.
    private const double Score = 3.4;

    // A sum of many ways stands at most so far over its median; three transmitters side by side stand higher.
    private const double HighestOverMedianDb = 8;

    private const double LeastStructureDb = 1.5;
    private const double StructureOverChance = 5;
    private const double NormalMedian = 0.6745;

    // Standard deviation of a strong signal's level in weak noise, in dB, at a signal-to-noise ratio of 0 dB: (20/ln 10)/√2.
    private const double UnitDeviationDb = 6.141851463713754;
    private const int HalfWidth = 16;

    private readonly FloorScatter _scatter;
    private readonly int _sweeps;

    private ShapedFloor(SweepBlock floor)
    {
        _scatter = new FloorScatter(floor);
        _sweeps = floor.SweepCount;
        Variance = [.. Enumerable.Range(0, floor.PointCount).Select(_scatter.VarianceAt)];
    }

    /// <summary>Level of the steady signal in dB at each frequency.</summary>
    public ImmutableArray<double> LevelDb => SteadyLeakage.Filled(_scatter.Mean);

    private double[] Variance { get; }

    /// <summary>The steady signal; null where the floor is noise, or does not show what it is.</summary>
    public static ShapedFloor? Of(SweepBlock floor)
    {
        if (floor.SweepCount < 2 || floor.PointCount < FewestPoints)
        {
            return null;
        }

        var shaped = new ShapedFloor(floor);
        return shaped.ScattersAsASignal(DisplayStep.Deviation(floor)) || shaped.HasStructure() ? shaped : null;
    }

    /// <summary>
    /// Power of the noise in which the signal stands, at each frequency, as its scatter shows it, pooled over neighbours.
    /// </summary>
    public double[] NoisePower()
    {
        double[] own =
            [.. _scatter.Mean.Select((level, f) => Math.Pow(10, level / 10) * Variance[f] / (UnitDeviationDb * UnitDeviationDb))];
        return
        [
            .. Enumerable.Range(0, own.Length).Select(f =>
                own[Math.Max(0, f - HalfWidth)..Math.Min(own.Length, f + HalfWidth + 1)].Average()),
        ];
    }

    // Rounding scatters alike at every level; where it rules the slope cannot be told. The level is that of the neighbours: a
    // reading's own mean and variance go together, since log readings fall deep. A transmitter is a steady signal too, but at few
    // frequencies and above the others.
    private bool ScattersAsASignal(double roundingDb)
    {
        double[] level = [.. Enumerable.Range(0, Variance.Length).Select(Beside)];
        double highest = Sample.Median(level) + HighestOverMedianDb;
        int[] told =
            [.. Enumerable.Range(0, level.Length).Where(f => Variance[f] > 2 * roundingDb * roundingDb && level[f] <= highest)];
        if (told.Length < FewestPoints)
        {
            return false;
        }

        double[] x = [.. told.Select(f => level[f])];
        double[] deviations = Deviations.FromMean(x);
        double spread = Deviations.Product(deviations, deviations);
        if (!(spread > 0))
        {
            return false;
        }

        double slope = RegressionLine.Of(x, [.. told.Select(f => Math.Log(Variance[f]))]).Slope.Value;
        double alike = _scatter.Correlation * _scatter.Correlation;
        double error = Math.Sqrt(GammaFunctions.Polygamma(1, (_sweeps - 1) / 2.0) / spread * (1 + alike) / (1 - alike));
        return slope < SignalSlope / 2 && slope < -Score * error;
    }

    // Median of the neighbours' levels: a transmitter at one of them does not move it.
    private double Beside(int f) => Sample.Median(
        [.. new[] { f - 2, f - 1, f + 1, f + 2 }.Where(i => i >= 0 && i < _scatter.Mean.Length).Select(i => _scatter.Mean[i])]);

    private bool HasStructure()
    {
        double chance = Variance.Average() / _sweeps;
        double[] away =
            [.. LocalLine.Residuals(_scatter.Mean, Math.Max(FewestPoints / 2, _scatter.Mean.Length / 14)).Select(Math.Abs)];
        double structure = Sample.Median(away) / NormalMedian;
        return structure >= LeastStructureDb && structure * structure >= StructureOverChance * StructureOverChance * chance;
    }
}
