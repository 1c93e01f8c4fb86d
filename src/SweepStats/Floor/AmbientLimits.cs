using SweepStats.Statistics;
using Beta = MathNet.Numerics.Distributions.Beta;

namespace SweepStats.Floor;

/// <summary>How high noise alone reads, in dB over the floor, when it is looked at so many times.</summary>
/// <remarks>
/// Few readings show their scatter badly: limits are widened by Student's quantile over the normal one. No noise scatters by
/// more than single looks do, so no limit lies above theirs.
/// </remarks>
internal sealed class AmbientLimits
{
    private readonly DetectorNoise _noise;
    private readonly DetectorNoise _widest = new(1);
    private readonly int _sweeps;
    private readonly double _share;
    private readonly double _widening;

    /// <param name="noise">How noise alone reads.</param>
    /// <param name="sweeps">Floor sweeps.</param>
    /// <param name="share">Chance of passing a limit at one frequency.</param>
    /// <param name="degreesOfFreedom">
    /// Degrees of freedom of the scatter that the noise was told by; infinity where it is known.
    /// </param>
    public AmbientLimits(DetectorNoise noise, int sweeps, double share, double degreesOfFreedom)
    {
        _noise = noise;
        _sweeps = sweeps;
        _share = share;
        _widening = StudentT.Quantile(1 - share, degreesOfFreedom) / StudentT.Quantile(1 - share, double.PositiveInfinity);
        Mean = Limit(n => n.CriticalRise(sweeps, 1 - share));
        Single = Limit(n => n.HighestReading(1 - (share / sweeps)));
        AboveOthers = sweeps > 1 ? Limit(OverOthers) : double.PositiveInfinity;
    }

    /// <summary>Of the log mean of all sweeps.</summary>
    public double Mean { get; }

    /// <summary>Of the highest reading of all sweeps.</summary>
    public double Single { get; }

    /// <summary>Of the highest reading over the middle one of the other sweeps.</summary>
    public double AboveOthers { get; }

    /// <summary>Place, from 0, of the middle reading of the other sweeps, the lower of two.</summary>
    public int MiddleOfOthers => (_sweeps - 2) / 2;

    private double Limit(Func<DetectorNoise, double> of) => Math.Min(_widening * of(_noise), of(_widest));

    // One reading stands so high, or the middle of the others so low: each gets half of the chance.
    private double OverOthers(DetectorNoise noise)
    {
        double half = _share / _sweeps / 2;
        int others = _sweeps - 1;
        double low = Beta.InvCDF(MiddleOfOthers + 1, others - MiddleOfOthers, half);
        return noise.HighestReading(1 - half) - noise.HighestReading(low);
    }
}
