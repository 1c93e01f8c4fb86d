using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>
/// How a detector shows a steady signal in Gaussian noise on a dB scale: power averaged over <see cref="Looks"/> independent
/// looks, and <see cref="LogAverages"/> such values averaged in dB.
/// </summary>
/// <remarks>
/// Averaging in dB leaves the means of <see cref="RiseCurve"/> as they are and shrinks the scatter. Where the highest or the
/// lowest look is kept, a law of
/// its own stands in for all of it (<see cref="Kept"/>).
/// </remarks>
public class DetectorNoise
{
    /// <summary>dB per neper of power: 10/ln 10.</summary>
    public const double DecibelsPerNeper = 4.342944819032518;

    private readonly RiseCurve _curve;
    private readonly LogCumulants? _cumulants;

    /// <summary>Prepares the curve.</summary>
    /// <param name="looks">
    /// Independent looks averaged in power, at least 0.5; need not be whole; infinity stands for noise without scatter.
    /// </param>
    /// <param name="logAverages">Such values averaged in dB, at least 0.5; need not be whole.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than half a look or average.</exception>
    public DetectorNoise(double looks, double logAverages = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(looks - 0.5, nameof(looks));
        ArgumentOutOfRangeException.ThrowIfNegative(logAverages - 0.5, nameof(logAverages));
        Looks = looks;
        LogAverages = logAverages;
        double offset = double.IsPositiveInfinity(looks) ? 0
            : DecibelsPerNeper * (GammaFunctions.Digamma(looks) - Math.Log(looks));
        LogMeanOffset = offset;
        LogStandardDeviation = double.IsPositiveInfinity(looks) ? 0
            : DecibelsPerNeper * Math.Sqrt(GammaFunctions.Polygamma(1, looks) / logAverages);
        _curve = new RiseCurve(looks, offset);
        _cumulants = double.IsPositiveInfinity(looks) ? null : new LogCumulants(looks);
    }

    /// <summary>Which of its looks the detector keeps.</summary>
    public virtual KeptLook Kept => KeptLook.Average;

    /// <summary>Independent looks averaged in power; where one of several is kept, how many there are.</summary>
    public double Looks { get; }

    /// <summary>Values averaged in dB.</summary>
    public double LogAverages { get; }

    /// <summary>Log mean of noise alone minus its power mean in dB: K(ψ(M) − ln M), −2.507 dB for one look, 0 for many.</summary>
    public virtual double LogMeanOffset { get; }

    /// <summary>Standard deviation of one reading of noise alone in dB: K·√(ψ₁(M)/L), 5.570 dB for one look.</summary>
    public virtual double LogStandardDeviation { get; }

    /// <summary>Looks that explain a standard deviation of noise readings in dB; infinity for 0 dB.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is negative or not a number.</exception>
    public static double LooksFor(double standardDeviation)
    {
        if (!(standardDeviation >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(standardDeviation), standardDeviation,
                "A standard deviation is not negative.");
        }

        double nepers = standardDeviation / DecibelsPerNeper;
        return nepers == 0 ? double.PositiveInfinity : GammaFunctions.InverseTrigamma(nepers * nepers);
    }

    /// <summary>
    /// What the log mean of <paramref name="readings"/> readings of noise alone exceeds its expectation by with a small
    /// probability, in dB.
    /// </summary>
    /// <remarks>
    /// A log reading of noise is skewed, so a normal quantile is too high for few looks. Quantile by the first three terms of
    /// Cornish and Fisher's expansion with the cumulants Kᵏψₖ₋₁(M)/(LN)^(k−1). Source: Abramowitz and Stegun 26.2.49. A single
    /// power reading has its exact gamma quantile. Error at the 97.5 % point, one look: 0.03 standard deviations (0.11 dB) for
    /// two readings, 0.016 for three, 0.003 for ten; less for more looks.
    /// </remarks>
    /// <param name="readings">How many readings are averaged, at least 1.</param>
    /// <param name="probability">Probability of staying below, for example 0.975.</param>
    public virtual double CriticalRise(double readings, double probability)
    {
        double averaged = LogAverages * readings;
        if (double.IsPositiveInfinity(Looks) || double.IsPositiveInfinity(averaged))
        {
            return 0;
        }

        if (averaged == 1)
        {
            return HighestReading(probability);
        }

        double variance = GammaFunctions.Polygamma(1, Looks) / averaged;
        double skew = GammaFunctions.Polygamma(2, Looks) / (averaged * averaged) / Math.Pow(variance, 1.5);
        double excess = GammaFunctions.Polygamma(3, Looks) / (averaged * averaged * averaged) / (variance * variance);
        return DecibelsPerNeper * Math.Sqrt(variance) * CornishFisher.Quantile(probability, skew, excess);
    }

    /// <summary>How far one reading of noise alone lies above the log mean with a small probability, in dB.</summary>
    /// <remarks>For power averages a gamma quantile, exact in the far tail; for log averages by Cornish and Fisher.</remarks>
    /// <param name="probability">Probability of staying below.</param>
    public virtual double HighestReading(double probability) =>
        LogAverages == 1 && double.IsFinite(Looks)
            ? (10 * Math.Log10(GammaDistribution.Quantile(Looks, probability) / Looks)) - LogMeanOffset
            : CriticalRise(1, probability);

    /// <summary>
    /// Variance and third cumulant of one reading of a signal in noise, in dB² and dB³; the third is negative, since readings
    /// fall deep and rise little.
    /// </summary>
    /// <param name="snrDb">Signal-to-noise ratio in dB; −∞ for noise alone.</param>
    internal virtual (double Variance, double Third) LogCumulants(double snrDb)
    {
        if (_cumulants is null)
        {
            return (0, 0);
        }

        (double variance, double third) = _cumulants.Of(Math.Pow(10, snrDb / 10));
        double k = DecibelsPerNeper;
        return (k * k * variance / LogAverages, k * k * k * third / (LogAverages * LogAverages));
    }

    /// <summary>Rise of the log mean over the noise-only log mean in dB, for a signal-to-noise power ratio.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is negative or not a number.</exception>
    public virtual double Rise(double snr) => _curve.Rise(snr);

    /// <summary>Signal-to-noise ratio in dB that explains a rise in dB; −∞ for a rise of 0 or less. Error: 1e-9 dB.</summary>
    public virtual double SnrInDecibels(double rise) => _curve.SnrInDecibels(rise);

    /// <summary>The same by Newton to the last digits, at a hundred times the cost.</summary>
    public virtual double ExactSnrInDecibels(double rise) => _curve.ExactSnrInDecibels(rise);

    /// <summary>
    /// The same for the strongest signal that such a rise leaves possible: another one only where a single look is kept.
    /// </summary>
    internal virtual double StrongestSnrInDecibels(double rise) => SnrInDecibels(rise);

    /// <summary>
    /// Rise in dB up to which there need be no signal at all, for means without error: 0, or a little more where a single look is
    /// kept.
    /// </summary>
    internal virtual double LeastRiseDb => 0;
}
