using System.Runtime.InteropServices;
using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Storage;

namespace SweepStats.Shielding;

/// <summary>
/// Log means of repeated sweeps at every frequency, with the means of the units that count as independent repeats.
/// </summary>
/// <remarks>
/// Where placements are named the mean of a placement is the unit: sweeps of one placement only show how repeatable the
/// instrument is. Sweeps without a placement's name form one more. A single placement has no spread to show; its sweeps are the
/// units then.
/// </remarks>
internal sealed class RepeatedLevels
{
    private readonly SweepBlock _block;
    private readonly KeptRows? _placements;

    // Of each frequency the log mean, its standard error, and the variance that is usual there.
    private readonly KeptRows _summary;

    // Where sweeps are the units they are read where they stand.
    private RepeatedLevels(SweepBlock block, double[][] placements)
    {
        (_block, _placements) = (block, placements.Length > 1 ? block.Store.Keep(placements) : null);
        UnitCount = _placements is null ? block.SweepCount : placements.Length;
        _summary = block.Store.Keep(Summary());
    }

    /// <summary>Where rows found from these are kept.</summary>
    public RowStore Store => _block.Store;

    /// <summary>Independent repeats: placements where two or more are there, else sweeps.</summary>
    public int UnitCount { get; }

    /// <summary>All sweeps, whatever counts as a repeat.</summary>
    public required int SweepCount { get; init; }

    /// <summary>Placements, sweeps without a name forming one more; null where none is named.</summary>
    public required int? PlacementCount { get; init; }

    /// <summary>Standard deviation in dB of sweeps of one placement, rms over frequency; null where none has two.</summary>
    public required double? RepeatabilityDb { get; init; }

    /// <summary>Standard deviation of the display's rounding in dB, which no repeat averages away.</summary>
    public required double RoundingDb { get; init; }

    /// <summary>Frequencies.</summary>
    public int PointCount => _block.PointCount;

    /// <summary>Whether there are two independent repeats or more.</summary>
    public bool Repeated => UnitCount > 1;

    /// <summary>
    /// What the units are worth where they go together in the order taken; null where they count as independent.
    /// </summary>
    public RepeatWorth? Worth { get; private init; }

    /// <summary>Degrees of freedom of the scatter at a frequency.</summary>
    public double DegreesOfFreedom => Worth?.DegreesOfFreedom ?? Math.Max(UnitCount - 1, 1);

    public RepeatedLevel this[int point] => new(MeanDb(point), ErrorAt(point))
    {
        UsualErrorDb = WithRounding(Widened(_summary.Rows[2][point])),
    };

    /// <summary>Log means in dB, one a frequency.</summary>
    private ReadOnlySpan<double> MeansDb => _summary.Rows[0];

    /// <summary>Log mean at a frequency in dB.</summary>
    public double MeanDb(int point) => _summary.Rows[0][point];

    /// <summary>Levels of a repeat in dB, one a frequency: of a sweep, or the log mean of a placement.</summary>
    public ReadOnlySpan<double> Unit(int unit) => _placements is null ? _block[unit] : _placements.Rows[unit];

    /// <summary>Standard error of the mean at a frequency in dB, as if the units were independent.</summary>
    public double IndependentErrorDb(int point) => WithRounding(Squared(StandardErrors[point]));

    /// <summary>Standard uncertainty in dB that rounding leaves in a weighted sum over the frequencies.</summary>
    /// <param name="weights">One a frequency.</param>
    public double Rounding(double[] weights) => ShownRounding.Of(_block, RoundingDb, weights);

    /// <summary>Root mean square over frequency of the standard deviation of one unit, in dB.</summary>
    public double UnitDeviationDb()
    {
        double sum = 0;
        foreach (double error in StandardErrors)
        {
            sum += error * error * UnitCount;
        }

        return Math.Sqrt(sum / PointCount);
    }

    /// <summary>
    /// Variance of the signal of one unit in dB², averaged over the frequencies that stand so far over the floor; null where none
    /// does. What noise adds is taken out, and what it hides is put back: of a signal near the floor a reading shows a share
    /// only.
    /// </summary>
    public double? SignalVariance(NoiseFloor floor, double riseDb)
    {
        double sum = 0;
        int count = 0;
        ReadOnlySpan<double> mean = MeansDb, errors = StandardErrors;
        for (int f = 0; f < PointCount; f++)
        {
            double rise = mean[f] - floor.LevelDb[f];
            if (!floor.Ambient[f] && rise >= riseDb)
            {
                double noise = double.PositiveInfinity;
                foreach (DetectorNoise kind in floor.Noise)
                {
                    noise = Math.Min(noise, kind.LogCumulants(kind.SnrInDecibels(rise)).Variance);
                }

                double shown = 1 - Math.Pow(10, -rise / 10);
                sum += ((errors[f] * errors[f] * UnitCount) - (noise * UnitCount / SweepCount)) / (shown * shown);
                count++;
            }
        }

        return count == 0 || !Repeated ? null : Math.Max(0, sum / count);
    }

    /// <param name="block">The sweeps.</param>
    /// <param name="roundingDb">Rounding that other sweeps of the same receiver show, in dB; the larger counts.</param>
    /// <param name="sweeps">What the sweeps are.</param>
    /// <param name="together">Whether repeats go together in the order taken.</param>
    public static RepeatedLevels From(SweepBlock block, double roundingDb, RepeatKind sweeps, SerialCorrelation together)
    {
        int[] placement = block.Placements();
        ILookup<int, int> sweepsOf = Enumerable.Range(0, placement.Length).ToLookup(j => placement[j]);
        ImmutableArray<ImmutableArray<double>> means =
            [.. Enumerable.Range(0, sweepsOf.Count).Select(p => block.Means([.. sweepsOf[p]]))];
        return new RepeatedLevels(block, [.. means.Select(m => ImmutableCollectionsMarshal.AsArray(m)!)])
        {
            SweepCount = block.SweepCount,
            PlacementCount = block.Sweeps.Any(s => s.Placement is not null) ? means.Length : null,
            RepeatabilityDb = Repeatability(block, placement, means),
            RoundingDb = Math.Max(roundingDb, DisplayStep.Deviation(block)),
            Worth = together.Worth(means.Length > 1 ? RepeatKind.Placement : sweeps,
                means.Length > 1 ? means.Length : block.SweepCount),
        };
    }

    private static double? Repeatability(SweepBlock block, int[] placement, ImmutableArray<ImmutableArray<double>> means)
    {
        int dof = block.SweepCount - means.Length;
        if (dof == 0)
        {
            return null;
        }

        double squares = 0;
        for (int j = 0; j < block.SweepCount; j++)
        {
            ReadOnlySpan<double> sweep = block[j];
            ReadOnlySpan<double> mean = means[placement[j]].AsSpan();
            for (int f = 0; f < sweep.Length; f++)
            {
                squares += (sweep[f] - mean[f]) * (sweep[f] - mean[f]);
            }
        }

        return Math.Sqrt(squares / dof / block.PointCount);
    }

    private Contribution ErrorAt(int point) =>
        new(WithRounding(Widened(Squared(StandardErrors[point]))), DegreesOfFreedom);

    private ReadOnlySpan<double> StandardErrors => _summary.Rows[1];

    private static double Squared(double value) => value * value;

    private double Widened(double variance) => Worth is { } worth ? worth.Factor * variance : variance;

    private double WithRounding(double variance) => Math.Sqrt(variance + (RoundingDb * RoundingDb));

    // Unit by unit, as they lie in memory; at each frequency the sums run in the order of the units.
    private double[][] Summary()
    {
        ReadOnlySpan<double> origin = Unit(0);
        var off = new double[PointCount];
        var squares = new double[PointCount];
        for (int j = 0; j < UnitCount; j++)
        {
            ReadOnlySpan<double> unit = Unit(j);
            for (int f = 0; f < off.Length; f++)
            {
                // The first unit is taken off so that equal levels have exactly no spread.
                off[f] += unit[f] - origin[f];
            }
        }

        for (int f = 0; f < off.Length; f++)
        {
            off[f] /= UnitCount;
        }

        for (int j = 0; j < UnitCount; j++)
        {
            ReadOnlySpan<double> unit = Unit(j);
            for (int f = 0; f < off.Length; f++)
            {
                double d = unit[f] - origin[f] - off[f];
                squares[f] += d * d;
            }
        }

        (double[] mean, double[] error) = (off, squares);
        for (int f = 0; f < mean.Length; f++)
        {
            mean[f] = origin[f] + off[f];
            error[f] = UnitCount > 1 ? Math.Sqrt(squares[f] / (UnitCount - 1) / UnitCount) : 0;
        }

        return [mean, error, UsualScatter.Of(error)];
    }
}
