using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Fields;

/// <summary>A pulse E(t) = A·(e^(−αt) − e^(−βt)) from t = 0 on, in V/m. Immutable.</summary>
/// <remarks>
/// Closed forms, each exact to rounding. Spectrum A·(β−α)/((α+iω)(β+iω)) in V/m/Hz; energy A²/Z0·(1/2α + 1/2β − 2/(α+β)) in J/m²,
/// with Z0 the wave impedance of free space, as of a plane wave. Share of the energy below f:
/// (2/π)·(atan(ω/α)/α − atan(ω/β)/β)/(1/α − 1/β). Source of form and constants: IEC 61000-2-9, early-time part
/// (from public texts; figures recomputed).
/// </remarks>
public sealed record DoubleExponential
{
    /// <summary>Wave impedance of free space in Ω (CODATA 2018: 376.730 313 668).</summary>
    public const double FreeSpaceOhm = 376.730313668;

    /// <summary>How many times as fast the rise may be as the decay: farther apart, no grid of times holds both.</summary>
    public const double MostRatio = 1000;

    /// <summary>How many times as fast it has to be: nearer together, the two exponentials cancel.</summary>
    public const double LeastRatio = 1.1;

    private DoubleExponential(double amplitude, double decay, double rise)
    {
        (AmplitudeVoltsPerMetre, DecayPerSecond, RisePerSecond) = (amplitude, decay, rise);
    }

    /// <summary>The early-time pulse of IEC 61000-2-9: 50 kV/m times 1.3, α = 4·10⁷ and β = 6·10⁸ per second.</summary>
    public static DoubleExponential EarlyTime { get; } = new(50e3 * 1.3, 4e7, 6e8);

    /// <summary>A in V/m, positive.</summary>
    public double AmplitudeVoltsPerMetre { get; }

    /// <summary>α per second, positive.</summary>
    public double DecayPerSecond { get; }

    /// <summary>β per second, above α.</summary>
    public double RisePerSecond { get; }

    /// <summary>When it is highest, in seconds: ln(β/α)/(β − α).</summary>
    public double PeakSeconds => Math.Log(RisePerSecond / DecayPerSecond) / (RisePerSecond - DecayPerSecond);

    /// <summary>How high it then is, in V/m.</summary>
    public double PeakVoltsPerMetre => FieldAt(PeakSeconds);

    /// <summary>Energy that it carries through an area, in J/m².</summary>
    public double JoulesPerSquareMetre =>
        AmplitudeVoltsPerMetre * AmplitudeVoltsPerMetre / FreeSpaceOhm
        * ((0.5 / DecayPerSecond) + (0.5 / RisePerSecond) - (2 / (DecayPerSecond + RisePerSecond)));

    /// <summary>A pulse that is so high at its highest.</summary>
    /// <param name="peak">Peak in V/m, positive and finite.</param>
    /// <param name="decay">α per second, positive and finite.</param>
    /// <param name="rise">β per second, between <see cref="LeastRatio"/> and <see cref="MostRatio"/> times α.</param>
    /// <exception cref="ArgumentOutOfRangeException">A constant is out of range.</exception>
    public static DoubleExponential OfPeak(double peak, double decay, double rise)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(peak);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(decay);
        if (!(rise >= LeastRatio * decay && rise <= MostRatio * decay))
        {
            throw new ArgumentOutOfRangeException(
                nameof(rise), rise, FormattableString.Invariant($"β lies between {LeastRatio} and {MostRatio} times α."));
        }

        return new DoubleExponential(peak / new DoubleExponential(1, decay, rise).PeakVoltsPerMetre, decay, rise);
    }

    /// <summary>Field at a time, in V/m; 0 before the start.</summary>
    public double FieldAt(double seconds) =>
        seconds <= 0 ? 0 : AmplitudeVoltsPerMetre * (Math.Exp(-DecayPerSecond * seconds) - Math.Exp(-RisePerSecond * seconds));

    /// <summary>Magnitude of the spectrum at a frequency, in V/m/Hz.</summary>
    public double SpectrumAt(Hertz frequency)
    {
        double turn = 2 * Math.PI * frequency.Value;
        return AmplitudeVoltsPerMetre * (RisePerSecond - DecayPerSecond) / (
            Length(DecayPerSecond, turn) * Length(RisePerSecond, turn));
    }

    /// <summary>Share of the energy at and below a frequency, 0 to 1.</summary>
    public double EnergyShareBelow(Hertz frequency)
    {
        double turn = 2 * Math.PI * frequency.Value, decay = DecayPerSecond, rise = RisePerSecond;
        return 2 / Math.PI * ((Math.Atan(turn / decay) / decay) - (Math.Atan(turn / rise) / rise)) / ((1 / decay) - (1 / rise));
    }

    /// <summary>Share of the energy within a band, 0 to 1.</summary>
    public double EnergyShareIn(FrequencyBand band) => EnergyShareBelow(band.Stop) - EnergyShareBelow(band.Start);

    /// <summary>Share of the energy at frequencies that a grid holds, its gaps left out, 0 to 1.</summary>
    public double EnergyShareIn(FrequencyGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        return EnergyShareIn(grid.Band) - FrequencyGaps.Of(grid).Sum(EnergyShareIn);
    }

    private static double Length(double real, double imaginary) => Math.Sqrt((real * real) + (imaginary * imaginary));
}
