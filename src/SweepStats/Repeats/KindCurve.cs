using SweepStats.Alignment;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>
/// What sweeps of one kind look like: their middle over frequency, and how far one of them lies from it. Immutable.
/// </summary>
/// <remarks>
/// Medians over the sweeps, so that one of another kind among them does not move what they look like. A reading of the same
/// kind lies within three standard deviations of a difference, 3·√2·s; s is the median over the sweeps of their root mean
/// square distance from the middle, in which placements are.
/// </remarks>
internal sealed class KindCurve
{
    /// <summary>Share of the frequencies that are most of them.</summary>
    public const double Most = 0.8;

    private const double Deviations = 3;

    // A file is not written in finer steps, and placements hardly repeat better.
    private const double LeastScatterDb = 0.3;

    // One look at noise scatters by 5.6 dB; a signal that scatters by more than 2 dB is several.
    private const double MostOfNoiseDb = 6, MostOfSignalDb = 2;

    // So far a sweep may lie off as a whole.
    private const double LeastOffsetDb = 1, MostOffsetDb = 3;

    private readonly double[] _middleDb;
    private readonly double _scatterDb;

    private KindCurve(SweepRole role, SpecimenName? specimen, double[][] sweeps)
    {
        (Role, Specimen) = (role, specimen);
        _middleDb = Middle(sweeps);
        double scatter =
            Sample.Median([.. sweeps.Select(s => Math.Sqrt(s.Zip(_middleDb, (a, b) => (a - b) * (a - b)).Average()))]);
        _scatterDb = Math.Clamp(scatter, LeastScatterDb, role == SweepRole.Floor ? MostOfNoiseDb : MostOfSignalDb);
    }

    /// <summary>What the sweeps were taken for.</summary>
    public SweepRole Role { get; }

    /// <summary>Which specimen; null for floor and reference.</summary>
    public SpecimenName? Specimen { get; }

    /// <summary>The middle of its sweeps in dB, one a frequency.</summary>
    public IReadOnlyList<double> MiddleDb => _middleDb;

    /// <param name="block">The sweeps.</param>
    /// <param name="specimen">Which specimen; null for floor and reference.</param>
    public static KindCurve Of(SweepBlock block, SpecimenName? specimen = null) =>
        new(block.Sweeps[0].Role, specimen, [.. Enumerable.Range(0, block.SweepCount).Select(j => block[j].ToArray())]);

    /// <summary>Median at each frequency of some sweeps.</summary>
    public static double[] Middle(double[][] sweeps) => new RowMedians(sweeps.Length).Of(j => sweeps[j], sweeps[0].Length);

    /// <summary>Median distance of a sweep from the middle in dB, without sign.</summary>
    public double AwayDb(double[] sweep) => Sample.Median([.. sweep.Zip(_middleDb, (a, b) => Math.Abs(a - b))]);

    /// <summary>Frequencies at which a sweep lies within the scatter.</summary>
    public int Agreeing(double[] sweep)
    {
        double most = Deviations * Math.Sqrt(2) * _scatterDb;
        return sweep.Zip(_middleDb).Count(p => Math.Abs(p.First - p.Second) <= most);
    }

    /// <summary>Whether a sweep reads like one of this kind: as a whole, and at most frequencies.</summary>
    public bool IsLike(double[] sweep)
    {
        double most = Math.Clamp(Deviations * _scatterDb, LeastOffsetDb, MostOffsetDb);
        return Math.Abs(Sample.Median([.. sweep.Zip(_middleDb, (a, b) => a - b)])) <= most
            && Agreeing(sweep) >= Most * sweep.Length;
    }
}
