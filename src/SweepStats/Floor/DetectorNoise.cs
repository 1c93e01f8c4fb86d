using MathNet.Numerics;
using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>
/// How a detector shows a steady signal in Gaussian noise on a dB scale: power averaged over <see cref="Looks"/> independent looks, and
/// <see cref="LogAverages"/> such values averaged in dB.
/// </summary>
/// <remarks>
/// A reading is (signal + noise power) averaged over M looks: M times its ratio to the noise power is a noncentral gamma variable with shape M and
/// noncentrality λ = Mγ, where γ is the signal-to-noise power ratio. Its log mean stands above that of noise alone by
/// g(γ) = K·(E ψ(M + J) − ψ(M)), J ~ Poisson(Mγ), K = 10/ln 10 (the Poisson mixture of gamma variables, and E ln Gamma(a) = ψ(a)).
/// Written as an integral, g(γ) = K·∫₀¹ (1−u)^(M−1)·(1 − e^(−λu))/u du; with u = 1/(1+e^(−v)) the integrand is analytic in |Im v| &lt; π/2 and
/// falls off exponentially, so the trapezoid rule with step 0.3 is exact to about 1e-14. It serves every M, whole or not, and every γ: the sum over J
/// loses its footing for long averages, the closed form for whole M cancels.
/// Averaging in dB leaves these means as they are and shrinks the scatter.
/// Units: dB for rises and log means, power ratio for γ. Error: below 1e-9 dB from −40 to +60 dB and M from 1 to 1 000 (fixtures/oracles/rise.R).
/// </remarks>
public sealed class DetectorNoise
{
    /// <summary>dB per neper of power: 10/ln 10.</summary>
    public const double DecibelsPerNeper = 4.342944819032518;

    private const double Step = 0.3;
    private const double HighestSnr = 1e8;

    private const double TableStart = -60;
    private const double TableEnd = 80;
    private const double TableStep = 0.2;

    private readonly Lazy<double[]> _table;
    private readonly double[] _u;
    private readonly double[] _weight;

    /// <summary>Prepares the curve.</summary>
    /// <param name="looks">Independent looks averaged in power, at least 0.5; need not be whole; infinity stands for noise without scatter.</param>
    /// <param name="logAverages">Such values averaged in dB, at least 0.5; need not be whole.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than half a look or average.</exception>
    public DetectorNoise(double looks, double logAverages = 1)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(looks - 0.5, nameof(looks));
        ArgumentOutOfRangeException.ThrowIfNegative(logAverages - 0.5, nameof(logAverages));
        Looks = looks;
        LogAverages = logAverages;
        _table = new Lazy<double[]>(Table);
        (_u, _weight) = double.IsPositiveInfinity(looks) ? ([], []) : Nodes(looks);
    }

    /// <summary>Independent looks averaged in power.</summary>
    public double Looks { get; }

    /// <summary>Values averaged in dB.</summary>
    public double LogAverages { get; }

    /// <summary>Log mean of noise alone minus its power mean in dB: K(ψ(M) − ln M), −2.507 dB for one look, 0 for many.</summary>
    public double LogMeanOffset => double.IsPositiveInfinity(Looks) ? 0 : DecibelsPerNeper * (GammaFunctions.Digamma(Looks) - Math.Log(Looks));

    /// <summary>Standard deviation of one reading of noise alone in dB: K·√(ψ₁(M)/L), 5.570 dB for one look.</summary>
    public double LogStandardDeviation =>
        double.IsPositiveInfinity(Looks) ? 0 : DecibelsPerNeper * Math.Sqrt(GammaFunctions.Polygamma(1, Looks) / LogAverages);

    /// <summary>Looks that explain a standard deviation of noise readings in dB; infinity for 0 dB.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The standard deviation is negative or not a number.</exception>
    public static double LooksFor(double standardDeviation)
    {
        if (!(standardDeviation >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(standardDeviation), standardDeviation, "A standard deviation is not negative.");
        }

        double nepers = standardDeviation / DecibelsPerNeper;
        return nepers == 0 ? double.PositiveInfinity : GammaFunctions.InverseTrigamma(nepers * nepers);
    }

    /// <summary>What the log mean of <paramref name="readings"/> readings of noise alone exceeds its expectation by with a small probability, in dB.</summary>
    /// <remarks>
    /// A log reading of noise is skewed, so a normal quantile is too high for few looks. Quantile by the first three terms of Cornish and Fisher's
    /// expansion with the cumulants Kᵏψₖ₋₁(M)/(LN)^(k−1). Source: Abramowitz and Stegun 26.2.49. A single power reading has its exact gamma quantile.
    /// Error at the 97.5 % point, one look: 0.03 standard deviations (0.11 dB) for two readings, 0.016 for three, 0.003 for ten; less for more looks.
    /// </remarks>
    /// <param name="readings">How many readings are averaged, at least 1.</param>
    /// <param name="probability">Probability of staying below, for example 0.975.</param>
    public double CriticalRise(double readings, double probability)
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
    public double HighestReading(double probability) =>
        LogAverages == 1 && double.IsFinite(Looks)
            ? (10 * Math.Log10(GammaDistribution.Quantile(Looks, probability) / Looks)) - LogMeanOffset
            : CriticalRise(1, probability);

    /// <summary>Rise of the log mean over the noise-only log mean in dB, for a signal-to-noise power ratio.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is negative or not a number.</exception>
    public double Rise(double snr) => RiseAndSlope(snr).Rise;

    /// <summary>Signal-to-noise ratio in dB that explains a rise in dB; −∞ for a rise of 0 or less.</summary>
    /// <remarks>
    /// Its distance from the closed form for noise without scatter, K·ln(e^(rise/K) − 1), changes by a few dB over the whole range and is read from a
    /// table by six-point interpolation: 1e-9 dB from the exact inverse, at a hundredth of its time.
    /// </remarks>
    public double SnrInDecibels(double rise)
    {
        if (!(rise > 0))
        {
            return double.NegativeInfinity;
        }

        double smooth = LevelWithoutScatter(rise);
        if (double.IsPositiveInfinity(Looks))
        {
            return smooth;
        }

        if (smooth > TableEnd - 1)
        {
            return FarAbove(rise);
        }

        double place = (smooth - TableStart) / TableStep;
        int left = (int)Math.Floor(place) - 2;
        double[] table = _table.Value;
        if (!(place >= 2) || left + 6 > table.Length)
        {
            return ExactSnrInDecibels(rise);
        }

        return smooth + Lagrange.SixPoint(table.AsSpan(left, 6), place - left);
    }

    /// <summary>The same by Newton to the last digits, without the table.</summary>
    public double ExactSnrInDecibels(double rise)
    {
        if (!(rise > 0))
        {
            return double.NegativeInfinity;
        }

        double level = LevelWithoutScatter(rise);
        if (level > TableEnd - 1 || double.IsPositiveInfinity(Looks))
        {
            return double.IsPositiveInfinity(Looks) ? level : FarAbove(rise);
        }

        for (int step = 0; step < 50; step++)
        {
            double snr = Math.Pow(10, level / 10);
            (double reached, double slope) = RiseAndSlope(snr);
            double move = (rise - reached) / (slope * snr);
            level += DecibelsPerNeper * Math.Clamp(move, -3, 3);
            if (Math.Abs(move) < 1e-13)
            {
                break;
            }
        }

        return level;
    }

    // Eight digits above the noise the curve is straight: g = K(ln Mγ + (M−1)/Mγ − ψ(M)), turned round with one correction.
    private double FarAbove(double rise)
    {
        double level = rise + LogMeanOffset;
        return level - (DecibelsPerNeper * (Looks - 1) / Looks * Math.Pow(10, -level / 10));
    }

    // Slope is dg/dγ in dB per unit of γ; both sums share the exponentials.
    private (double Rise, double Slope) RiseAndSlope(double snr)
    {
        if (!(snr >= 0))
        {
            throw new ArgumentOutOfRangeException(nameof(snr), snr, "A power ratio is not negative.");
        }

        if (double.IsPositiveInfinity(Looks))
        {
            return (DecibelsPerNeper * SpecialFunctions.Log1p(snr), DecibelsPerNeper / (1 + snr));
        }

        if (snr > HighestSnr)
        {
            // Two terms of the series in 1/λ leave 1e-16 out here.
            double above = Math.Log(Looks * snr) + ((Looks - 1) / (Looks * snr)) - GammaFunctions.Digamma(Looks);
            return (DecibelsPerNeper * above, DecibelsPerNeper / snr);
        }

        double lambda = Looks * snr;
        double rise = 0;
        double slope = 0;
        for (int i = 0; i < _u.Length; i++)
        {
            double x = lambda * _u[i];
            double decay = x < 740 ? Math.Exp(-x) : 0;
            rise += _weight[i] * (x < 1e-5 ? x * (1 - (x / 2)) : 1 - decay);
            slope += _weight[i] * _u[i] * decay;
        }

        return (DecibelsPerNeper * rise, DecibelsPerNeper * Looks * slope);
    }

    private static double LevelWithoutScatter(double rise) =>
        rise > 150 ? rise : DecibelsPerNeper * Math.Log(Exponential.MinusOne(rise / DecibelsPerNeper));

    private double[] Table()
    {
        var table = new double[(int)Math.Round((TableEnd - TableStart) / TableStep) + 1];
        for (int i = 0; i < table.Length; i++)
        {
            double smooth = TableStart + (i * TableStep);
            table[i] = ExactSnrInDecibels(DecibelsPerNeper * SpecialFunctions.Log1p(Math.Pow(10, smooth / 10))) - smooth;
        }

        return table;
    }

    private static (double[] U, double[] Weight) Nodes(double looks)
    {
        // Ends where what is left out is below 1e-15 of the sum: λu on the left, (1−u)^M on the right.
        double first = -Math.Log(looks * HighestSnr) - 34;
        double last = Math.Log(Exponential.MinusOne(36 / looks));
        int count = (int)Math.Ceiling((last - first) / Step) + 1;
        var u = new double[count];
        var weight = new double[count];
        for (int i = 0; i < count; i++)
        {
            double v = first + (i * Step);
            u[i] = 1 / (1 + Math.Exp(-v));
            // (1−u)^M through log(1+e^v), which keeps its digits at both ends.
            double logOneMinusU = v > 0 ? -v - Math.Log(1 + Math.Exp(-v)) : -SpecialFunctions.Log1p(Math.Exp(v));
            weight[i] = Step * Math.Exp(looks * logOneMinusU);
        }

        return (u, weight);
    }
}
