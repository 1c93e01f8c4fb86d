using SweepStats.Alignment;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Floor;

/// <summary>Estimates the noise floor from its sweeps, or takes it as declared.</summary>
public static class NoiseFloorEstimator
{
    // Readings that agree to the last digit show the display's steps, not endless averaging.
    private const double MostLooks = 1e4;

    /// <summary>
    /// What floor sweeps usually differ by as a whole in dB, which a single one cannot show: receivers drift by about this much.
    /// </summary>
    internal const double UnseenOffsetDb = 0.5;

    /// <summary>Estimates the floor from sweeps with the source off.</summary>
    /// <remarks>
    /// The scatter of a reading is pooled over frequencies; the number of looks follows from it where the receiver averages
    /// power. The level is pooled over neighbours that agree; its error holds chance, shrunk by the pooling, and the offsets
    /// between sweeps, which no pooling over frequency shrinks. Assumes Gaussian noise; frequencies with more than noise keep
    /// their own level and error.
    /// </remarks>
    public static NoiseFloor Estimate(SweepBlock floor, Averaging averaging)
    {
        ArgumentNullException.ThrowIfNull(floor);
        (FloorScatter scatter, bool[] ambient, ImmutableArray<DetectorNoise> noise) = Split(floor, averaging);
        return Assemble(floor, scatter, ambient, noise);
    }

    /// <summary>Tells noise from what transmits, each by what the other leaves.</summary>
    internal static FloorSplit Split(SweepBlock floor, Averaging averaging)
    {
        var scatter = new FloorScatter(floor);
        var ambient = new bool[floor.PointCount];
        ImmutableArray<DetectorNoise> noise = NoiseOf(averaging, scatter.TypicalDeviation());
        // Transmitters inflate the scatter that they are judged by; three rounds settle it.
        for (int round = 0; round < 3; round++)
        {
            bool[] marked = AmbientSearch.Mark(floor, scatter, noise[0]);
            bool settled = marked.All(m => m) || (round > 0 && marked.AsSpan().SequenceEqual(ambient));
            ambient = settled ? ambient : marked;
            noise = NoiseOf(averaging, scatter.Deviation(ambient));
            if (settled)
            {
                break;
            }
        }

        return new FloorSplit(scatter, ambient, noise);
    }

    /// <summary>How far off a declared floor is taken to be at most: 2 dB, the same way at all frequencies.</summary>
    public const double DeclaredHalfWidthDb = 2;

    /// <summary>
    /// Takes a floor as declared: one level for all frequencies, right to 2 dB; since its looks are unknown, both one and very
    /// many are reckoned with.
    /// </summary>
    /// <param name="levelDb">Level as the receiver displays it, on the scale of the sweeps.</param>
    /// <param name="pointCount">Number of frequencies.</param>
    /// <param name="averaging">How the receiver averages.</param>
    public static NoiseFloor Declare(double levelDb, int pointCount, Averaging averaging) => new()
    {
        Source = FloorSource.Declared,
        SweepCount = 0,
        Noise = NoiseOf(averaging),
        ReadingDeviationDb = 0,
        SweepOffsetDeviationDb = null,
        LevelDb = [.. Enumerable.Repeat(levelDb, pointCount)],
        HalfWidthDb = DeclaredHalfWidthDb,
        StandardErrorDb = [.. Enumerable.Repeat(0.0, pointCount)],
        DegreesOfFreedom = [.. Enumerable.Repeat(double.PositiveInfinity, pointCount)],
        Ambient = [.. Enumerable.Repeat(false, pointCount)],
    };

    /// <summary>The noise in which a steady signal stands, as the scatter of that signal shows it; one look a reading.</summary>
    /// <param name="sweeps">Sweeps behind it.</param>
    /// <param name="power">Power of the noise at each frequency, pooled over many.</param>
    internal static NoiseFloor InScatter(int sweeps, IReadOnlyList<double> power)
    {
        var noise = new DetectorNoise(1);
        return new NoiseFloor
        {
            Source = FloorSource.Measured,
            SweepCount = sweeps,
            Noise = [noise],
            ReadingDeviationDb = noise.LogStandardDeviation,
            SweepOffsetDeviationDb = null,
            LevelDb = [.. power.Select(p => (10 * Math.Log10(Math.Max(p, double.Epsilon))) + noise.LogMeanOffset)],
            StandardErrorDb = [.. power.Select(_ => UnseenOffsetDb)],
            DegreesOfFreedom = [.. power.Select(_ => double.PositiveInfinity)],
            Ambient = [.. power.Select(_ => false)],
        };
    }

    private static NoiseFloor Assemble(SweepBlock floor, FloorScatter scatter, bool[] ambient,
        ImmutableArray<DetectorNoise> noise)
    {
        int sweeps = floor.SweepCount;
        double deviation = scatter.Deviation(ambient);
        double correlation = scatter.Correlation;
        double inflation = Math.Sqrt((1 + correlation) / (1 - correlation));
        (double[] level, int[] count, double[] disagreement) =
            FloorWindow.Pool(scatter.Mean, ambient, noise[0], new(sweeps, inflation * inflation));
        double? offset = OffsetDeviation(scatter, deviation * inflation);
        double chanceDof = Math.Max(1, Math.Max(sweeps - 1, 0.5) * (floor.PointCount - 1) / (inflation * inflation));
        Contribution rounding = new(DisplayStep.Deviation(floor), double.PositiveInfinity);
        var error = new double[level.Length];
        var dof = new double[level.Length];
        for (int f = 0; f < level.Length; f++)
        {
            Contribution chance = ambient[f] && sweeps > 1
                ? new(Math.Sqrt(scatter.VarianceAt(f) / sweeps), sweeps - 1)
                : new(deviation / Math.Sqrt((double)sweeps * count[f]) * (count[f] > 1 ? inflation : 1), chanceDof);
            Contribution shared = offset switch
            {
                null => new(UnseenOffsetDb, double.PositiveInfinity),
                > 0 => new(offset.Value / Math.Sqrt(sweeps), sweeps - 1),
                _ => Contribution.None,
            };
            var uneven = new Contribution(disagreement[f], double.PositiveInfinity);
            error[f] = WelchSatterthwaite.Combined([chance, shared, rounding, uneven]);
            dof[f] = WelchSatterthwaite.DegreesOfFreedom([chance, shared, rounding, uneven]);
        }

        return new NoiseFloor
        {
            Source = FloorSource.Measured,
            SweepCount = sweeps,
            Noise = noise,
            ReadingDeviationDb = deviation,
            SweepOffsetDeviationDb = offset,
            LevelDb = [.. level],
            StandardErrorDb = [.. error],
            DegreesOfFreedom = [.. dof],
            Ambient = [.. ambient],
        };
    }

    // What sweeps differ by beyond the chance that is left in a mean over all frequencies.
    private static double? OffsetDeviation(FloorScatter scatter, double deviation)
    {
        int sweeps = scatter.Offset.Length;
        if (sweeps == 1)
        {
            return null;
        }

        double squares = 0;
        foreach (double offset in scatter.Offset)
        {
            squares += offset * offset;
        }

        return Math.Sqrt(Math.Max(0, (squares / (sweeps - 1)) - (deviation * deviation / scatter.Mean.Length)));
    }

    // Where nothing shows the scatter both ends of what it may be are reckoned with; a kept look is taken to scatter as a single
    // one, which asks most.
    private static ImmutableArray<DetectorNoise> NoiseOf(Averaging averaging) => averaging switch
    {
        Averaging.Log or Averaging.Sample => [new DetectorNoise(1)],
        Averaging.Peak => [HeldNoise.Highest(SingleLookScatter.Db)],
        Averaging.Lowest => [HeldNoise.Lowest(SingleLookScatter.Db)],
        _ => [new DetectorNoise(MostLooks), new DetectorNoise(1)],
    };

    private static ImmutableArray<DetectorNoise> NoiseOf(Averaging averaging, double deviation)
    {
        double single = new DetectorNoise(1).LogStandardDeviation;
        DetectorNoise power = new(Math.Clamp(DetectorNoise.LooksFor(deviation), 1, MostLooks));
        DetectorNoise log = new(1, Math.Clamp(single * single / (deviation * deviation), 1, MostLooks));
        return averaging switch
        {
            Averaging.Power => [power],
            Averaging.Log => [log],
            Averaging.Sample => [new DetectorNoise(1)],
            Averaging.Peak => [HeldNoise.Highest(deviation)],
            Averaging.Lowest => [HeldNoise.Lowest(deviation)],
            _ => [power, log],
        };
    }
}
