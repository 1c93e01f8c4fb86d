using SweepStats.Alignment;
using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>Splits floor readings into what a frequency, a sweep and chance contribute.</summary>
/// <remarks>
/// y(j, f) = m(f) + b(j) + e(j, f). With several sweeps m and b are row and column means and e the rest, with (n−1)(F−1) degrees
/// of freedom. With one sweep the rest is the distance of a point from the middle of its neighbours, whose variance is 3/2 of a
/// reading's; b cannot be told. Frequencies where something transmits can be left out of the variance.
/// </remarks>
internal sealed class FloorScatter
{
    // With fewer frequencies the offset of a sweep cannot be told from chance and stays in the scatter.
    private const int FewestForOffsets = 8;
    private const double MostCorrelation = 0.95;

    private readonly double[] _rest;
    private readonly int _sweeps;
    private readonly double _correlation;

    /// <summary>Splits the readings of a block; of fewer than eight frequencies no offsets are taken out.</summary>
    public FloorScatter(SweepBlock block)
    {
        _sweeps = block.SweepCount;
        Mean = Means(block);
        Offset = _sweeps > 1 && block.PointCount >= FewestForOffsets ? Offsets(block, Mean) : new double[_sweeps];
        _rest = _sweeps > 1 ? Rests(block, Mean, Offset) : NeighbourRests(Mean);
        _correlation = _sweeps > 1 ? BetweenRests() : AlongTrace(Mean);
    }

    /// <summary>Log mean over the sweeps at each frequency.</summary>
    public double[] Mean { get; }

    /// <summary>What each sweep lies above the mean of all.</summary>
    public double[] Offset { get; }

    /// <summary>Variance of a reading at one frequency, offsets taken out; zero where it cannot be told.</summary>
    public double VarianceAt(int point)
    {
        double squares = 0;
        for (int j = 0; j < _sweeps; j++)
        {
            double e = _rest[(j * Mean.Length) + point];
            squares += e * e;
        }

        // Of smoothed neighbours the middle is nearer than of independent ones: var = σ²(3/2 − 2ρ + ρ²/2) for a correlation that
        // falls as ρ, ρ².
        return _sweeps > 1 ? squares / (_sweeps - 1) * OffsetCorrection
            : squares / (1.5 - (2 * _correlation) + (_correlation * _correlation / 2));
    }

    /// <summary>Standard deviation of a reading pooled over the frequencies not left out.</summary>
    public double Deviation(ReadOnlySpan<bool> leftOut)
    {
        double sum = 0;
        int count = 0;
        for (int f = 0; f < Mean.Length; f++)
        {
            if (!leftOut[f])
            {
                sum += VarianceAt(f);
                count++;
            }
        }

        return count == 0 ? 0 : Math.Sqrt(sum / count);
    }

    /// <summary>
    /// The same told by the median over the frequencies, which transmitters at less than half of them do not move; never more
    /// than that of all.
    /// </summary>
    /// <remarks>
    /// The median of a sample variance with ν degrees of freedom is (1 − 2/(9ν))³ of its mean (Wilson and Hilferty 1931, from
    /// memory; normal variables).
    /// </remarks>
    public double TypicalDeviation()
    {
        double share = 1 - (2.0 / (9 * Math.Max(1, _sweeps - 1)));
        double median = Sample.Median([.. Enumerable.Range(0, Mean.Length).Select(VarianceAt)]);
        return Math.Min(Deviation(new bool[Mean.Length]), Math.Sqrt(median / (share * share * share)));
    }

    /// <summary>
    /// Correlation between neighbouring frequencies of one sweep, not below 0: display smoothing makes them alike.
    /// </summary>
    public double Correlation => _correlation;

    private double BetweenRests()
    {
        double products = 0;
        double squares = 0;
        for (int j = 0; j < _sweeps; j++)
        {
            ReadOnlySpan<double> e = _rest.AsSpan(j * Mean.Length, Mean.Length);
            for (int f = 0; f + 1 < e.Length; f++)
            {
                products += e[f] * e[f + 1];
                squares += ((e[f] * e[f]) + (e[f + 1] * e[f + 1])) / 2;
            }
        }

        return squares > 0 ? Math.Clamp(products / squares, 0, MostCorrelation) : 0;
    }

    // One trace against its own running median: with fewer points than two windows the trend cannot be told from smoothing.
    private static double AlongTrace(double[] level)
    {
        const int half = 15;
        if (level.Length < 4 * half)
        {
            return 0;
        }

        double[] trend = RunningMedian.Of(level, half);
        double products = 0;
        double squares = 0;
        for (int f = half; f + half + 1 < level.Length; f++)
        {
            double here = level[f] - trend[f];
            double next = level[f + 1] - trend[f + 1];
            products += here * next;
            squares += ((here * here) + (next * next)) / 2;
        }

        return squares > 0 ? Math.Clamp(products / squares, 0, MostCorrelation) : 0;
    }

    private double OffsetCorrection => Mean.Length >= FewestForOffsets ? (double)Mean.Length / (Mean.Length - 1) : 1;

    private static double[] Means(SweepBlock block)
    {
        var mean = new double[block.PointCount];
        for (int j = 0; j < block.SweepCount; j++)
        {
            ReadOnlySpan<double> sweep = block[j];
            for (int f = 0; f < mean.Length; f++)
            {
                mean[f] += sweep[f];
            }
        }

        for (int f = 0; f < mean.Length; f++)
        {
            mean[f] /= block.SweepCount;
        }

        return mean;
    }

    private static double[] Offsets(SweepBlock block, double[] mean)
    {
        var offsets = new double[block.SweepCount];
        for (int j = 0; j < offsets.Length; j++)
        {
            ReadOnlySpan<double> sweep = block[j];
            for (int f = 0; f < mean.Length; f++)
            {
                offsets[j] += (sweep[f] - mean[f]) / mean.Length;
            }
        }

        return offsets;
    }

    private static double[] Rests(SweepBlock block, double[] mean, double[] offset)
    {
        var rest = new double[block.SweepCount * mean.Length];
        for (int i = 0; i < rest.Length; i++)
        {
            int j = i / mean.Length;
            int f = i % mean.Length;
            rest[i] = block[j][f] - mean[f] - offset[j];
        }

        return rest;
    }

    private static double[] NeighbourRests(double[] level)
    {
        var rest = new double[level.Length];
        for (int f = 1; f + 1 < level.Length; f++)
        {
            rest[f] = level[f] - ((level[f - 1] + level[f + 1]) / 2);
        }

        if (level.Length > 2)
        {
            rest[0] = rest[1];
            rest[^1] = rest[^2];
        }
        else
        {
            // Nothing shows the scatter: it is taken as that of a single look, the widest noise has. Twice 3/2 of the variance,
            // as neighbours would show.
            Array.Fill(rest, new DetectorNoise(1).LogStandardDeviation * Math.Sqrt(1.5));
        }

        return rest;
    }
}
