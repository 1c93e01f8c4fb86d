using System.Collections.Concurrent;
using SweepStats.Statistics;
using Normal = MathNet.Numerics.Distributions.Normal;

namespace SweepStats.Floor;

/// <summary>
/// How strong a signal must be for its level to be bounded from both sides in 95 of 100 campaigns like this one.
/// </summary>
/// <remarks>
/// Currie's detection limit in the geometry of a rise over the floor. A covered mean is bounded from both sides when its rise
/// exceeds both t·u (its own error) and what noise alone would do. With an error estimated from n units the rise must be δ·u,
/// with δ the noncentrality at which Student's t exceeds its own quantile with probability 0.95. Source: Currie 1968, Analytical
/// Chemistry 40, 586; IUPAC recommendation 1995 for the noncentral t (both from memory). Cautious: noise is taken to scatter as
/// much with a signal in it as without, and 97 to 100 % are bounded (see the coverage study).
/// </remarks>
/// <param name="noise">How noise reads.</param>
/// <param name="confidence">Two-sided level of the interval.</param>
/// <param name="floorShiftDb">
/// How far above the noise the floor is taken to lie in dB, where it may have moved: a signal must rise over that place to be
/// told.
/// </param>
public sealed class DetectionLimit(DetectorNoise noise, Confidence confidence, double floorShiftDb = 0)
{
    private const double Power = 0.95;

    // Where the floor is taken to lie below the noise, the noise itself rises over it.
    private const double LeastShownDb = 0.01;

    // In dB.
    private const double Converged = 1e-9;

    // A steeper one would send the next step far off.
    private const double SteepestChord = 0.95;
    private const int MostSteps = 60;

    // From an eighth of a dB on, by its distance from the least rise: nearer, the step of the quotient changes.
    private readonly Lazy<OctavePieces> _slopes =
        new(() => new OctavePieces(over => Quotient(noise, noise.LeastRiseDb + over), 1.0 / 8, 9, 5));

    private readonly StudentQuantile _student = StudentQuantile.Of(confidence.TwoSidedQuantile);

    // What depends on the repeats alone costs more than all the rest, and they are the same at every frequency.
    private readonly ConcurrentDictionary<DetectionRepeats, Asked> _asked = new();

    /// <summary>
    /// Signal-to-noise ratio in dB of the weakest signal that is bounded from both sides with probability 0.95.
    /// </summary>
    /// <param name="readings">Covered readings at one frequency.</param>
    /// <param name="units">Independent units among them, at least 2.</param>
    /// <param name="signalDeviation">Scatter of the signal from unit to unit in dB.</param>
    /// <param name="floorError">
    /// Standard error of the floor in dB, with its degrees of freedom: a floor of few readings hides more.
    /// </param>
    public double SignalToNoise(int readings, int units, double signalDeviation, Contribution floorError) =>
        SignalToNoise(new DetectionRepeats(readings, units), signalDeviation, floorError);

    /// <summary>The same of repeats that need not be independent.</summary>
    /// <param name="repeats">Repeats behind the mean.</param>
    /// <param name="signalDeviation">Scatter of the signal from unit to unit in dB.</param>
    /// <param name="floorError">Standard error of the floor in dB, with its degrees of freedom.</param>
    public double SignalToNoise(DetectionRepeats repeats, double signalDeviation, Contribution floorError)
    {
        Asked asked = _asked.GetOrAdd(repeats, AskedOf);
        double floorReach = floorError.StandardUncertainty == 0 ? 0
            : _student.At(floorError.DegreesOfFreedom) * floorError.StandardUncertainty;
        double rise = ItsOwnNeed(noise.LeastRiseDb + 0.5, r => Needed(r, asked, floorReach, repeats.VarianceFactor,
            signalDeviation * signalDeviation / repeats.Units));
        return noise.StrongestSnrInDecibels(Shown(rise));
    }

    // What has to be risen by, where the reading shows as much of a signal's scatter as it does at a rise.
    private double Needed(double rise, Asked asked, double floorReach, double factor, double signalVariance)
    {
        double slope = Slope(Shown(rise));
        double error = Math.Sqrt(factor * (asked.NoiseVariance + (slope * slope * signalVariance)));
        double chance = Math.Sqrt((asked.Critical * asked.Critical) + (floorReach * floorReach));
        return noise.LeastRiseDb + Math.Max(
            Math.Sqrt((asked.Delta * asked.Delta * error * error) + (floorReach * floorReach)), chance + (asked.Chance * error));
    }

    private double Shown(double rise) => Math.Max(rise + floorShiftDb, noise.LeastRiseDb + LeastShownDb);

    // The rise that needs itself, by secants. What is needed grows with the rise, by less than the rise does.
    private static double ItsOwnNeed(double start, Func<double, double> needed)
    {
        double before = start, neededBefore = needed(before), rise = neededBefore;
        for (int step = 0; step < MostSteps && Math.Abs(rise - before) > Converged; step++)
        {
            double here = needed(rise);
            double chord = Math.Min(SteepestChord, (here - neededBefore) / (rise - before));
            (before, neededBefore, rise) = (rise, here, rise + ((here - rise) / (1 - chord)));
        }

        return rise;
    }

    // How much of a signal's scatter the reading shows. Read off the tabled inverse: the curve itself costs a hundred times more,
    // and this stands in a loop.
    private double Slope(double rise) =>
        _slopes.Value.TryAt(rise - noise.LeastRiseDb, out double slope) ? slope : Quotient(noise, rise);

    private static double Quotient(DetectorNoise noise, double rise)
    {
        double step = Math.Min(0.01, (rise - noise.LeastRiseDb) / 8);
        return 2 * step / (noise.SnrInDecibels(rise + step) - noise.SnrInDecibels(rise - step));
    }

    private Asked AskedOf(DetectionRepeats repeats)
    {
        double z = Normal.InvCDF(0, 1, Power);
        return new Asked(
            Noncentrality(repeats.DegreesOfFreedom, z),
            noise.CriticalRise(repeats.Readings, confidence.TwoSidedQuantile),
            repeats.Shared ? StudentT.Quantile(Power, repeats.DegreesOfFreedom) : z,
            noise.LogStandardDeviation * noise.LogStandardDeviation / repeats.Readings);
    }

    // Beyond a t of 500 (two units and a confidence above 99.87 %) nothing is bounded in practice; an approximation does
    // (Abramowitz and Stegun 26.7.10).
    private double Noncentrality(double dof, double z)
    {
        double t = StudentT.Quantile(confidence.TwoSidedQuantile, dof);
        return t <= 500
            ? NoncentralT.DetectionNoncentrality(1 - confidence.TwoSidedQuantile, 1 - Power, dof)
            : (t * (1 - (1 / (4 * dof)))) + (z * Math.Sqrt(1 + (t * t / (2 * dof))));
    }

    /// <summary>What a mean of some repeats has to rise by.</summary>
    /// <param name="Delta">Noncentrality: so many of its own errors.</param>
    /// <param name="Critical">What noise alone would do, in dB.</param>
    /// <param name="Chance">So many errors more, for the power.</param>
    /// <param name="NoiseVariance">What noise adds to the variance of the mean, in dB².</param>
    private sealed record Asked(double Delta, double Critical, double Chance, double NoiseVariance);
}
