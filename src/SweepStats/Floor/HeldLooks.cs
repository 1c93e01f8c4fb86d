using MathNet.Numerics;
using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>How the highest of N independent single looks at noise reads on a log scale. Immutable.</summary>
/// <remarks>
/// The power of a look is exponential, so P(highest ≤ x) = (1 − e^(−x))^N, and ln x has the density
/// N·x·e^(−x)·(1 − e^(−x))^(N−1). It is analytic in |Im ln x| &lt; π/2 and falls off exponentially to both sides, so the
/// trapezoid rule between the points where 4·10⁻¹⁸ is left out is exact to about 1e-13; it serves every N, whole or not, where
/// the closed form (a sum of (−1)^(k+1)·C(N, k) times moments of ln x − ln k) cancels from some 30 looks on. The highest of one
/// look is that look: log mean −γ, variance π²/6, third cumulant −2ζ(3). Units: nepers of power, looks relative to the noise
/// power. Error: below 1e-10 of each cumulant from 1 to 10 000 looks (fixtures/oracles/held.R).
/// </remarks>
internal sealed class HeldLooks
{
    /// <summary>More looks than this change the shape little, and no receiver keeps the highest of more in a reading.</summary>
    public const double Most = 1e6;

    private const int Steps = 400;
    private const int MostSteps = 60;
    private const double Exact = 1e-13;

    // exp(−40): what the integral leaves out at either end.
    private const double LeftOut = 40;

    // Cumulants up to the sixth, from the first.
    private readonly double[] _cumulants = new double[6];

    /// <param name="looks">N, at least 1; need not be whole.</param>
    public HeldLooks(double looks)
    {
        Looks = looks;
        double first = Math.Log(-SpecialFunctions.Log1p(-Math.Exp(-LeftOut / looks)));
        double last = Math.Log(Math.Log(looks) + LeftOut);
        double step = (last - first) / Steps;
        var value = new double[Steps + 1];
        var weight = new double[Steps + 1];
        double whole = 0, mean = 0, amplitude = 0;
        for (int i = 0; i <= Steps; i++)
        {
            value[i] = first + (i * step);
            double x = Math.Exp(value[i]);
            weight[i] = Math.Exp(value[i] - x + ((looks - 1) * Math.Log(-Exponential.MinusOne(-x))));
            whole += weight[i];
            mean += weight[i] * value[i];
            amplitude += weight[i] * Math.Exp(value[i] / 2);
        }

        _cumulants[0] = mean / whole;
        Amplitude = 2 * Math.Log(amplitude / whole);
        Fill(value, weight, whole);
        Cumulants = [.. _cumulants[1..]];
    }

    /// <summary>
    /// The looks whose highest scatters with a variance; 1 where it scatters more than a single look, <see cref="Most"/> where
    /// less than that many.
    /// </summary>
    /// <remarks>
    /// The variance falls with every look. ln κ₂ over ln N is nearly straight, so that regula falsi (with Illinois' halving)
    /// needs some ten steps to 1e-13.
    /// </remarks>
    /// <param name="variance">Variance of the log in nepers squared of power.</param>
    public static HeldLooks Scattering(double variance)
    {
        HeldLooks few = new(1), many = new(Most);
        if (!(variance < few.Cumulants[0]))
        {
            return few;
        }

        if (!(variance > many.Cumulants[0]))
        {
            return many;
        }

        double Over(HeldLooks looks) => Math.Log(looks.Cumulants[0] / variance);
        return Between(new Tried(few, Over(few)), new Tried(many, Over(many)), Over);
    }

    private static HeldLooks Between(Tried few, Tried many, Func<HeldLooks, double> over)
    {
        HeldLooks middle = few.Looks;
        for (int step = 0; step < MostSteps; step++)
        {
            (double from, double to) = (Math.Log(few.Looks.Looks), Math.Log(many.Looks.Looks));
            middle = new HeldLooks(Math.Exp(from + ((to - from) * few.Over / (few.Over - many.Over))));
            double at = over(middle);
            if (Math.Abs(at) < Exact)
            {
                break;
            }

            // The end that stays is weighed half, or it would stay for good.
            var here = new Tried(middle, at);
            (few, many) = at > 0 ? (here, many with { Over = many.Over / 2 }) : (few with { Over = few.Over / 2 }, here);
        }

        return middle;
    }

    /// <summary>N.</summary>
    public double Looks { get; }

    /// <summary>Mean of the log.</summary>
    public double LogMean => _cumulants[0];

    /// <summary>Power level of the mean amplitude: 2·ln E √x, a little over the log mean.</summary>
    public double Amplitude { get; }

    /// <summary>Cumulants of the log of orders 2 to 6.</summary>
    public ImmutableArray<double> Cumulants { get; }

    /// <summary>What the log stays below with a probability between 0 and 1: ln(−ln(1 − p^(1/N))).</summary>
    public double Quantile(double probability) => Math.Log(-Math.Log(-Exponential.MinusOne(Math.Log(probability) / Looks)));

    // Of the central moments, in the order in which each needs those before it.
    private void Fill(double[] value, double[] weight, double whole)
    {
        var moment = new double[7];
        for (int i = 0; i < value.Length; i++)
        {
            double away = value[i] - _cumulants[0];
            double power = weight[i] / whole * away;
            for (int order = 2; order < moment.Length; order++)
            {
                power *= away;
                moment[order] += power;
            }
        }

        double m2 = moment[2], m3 = moment[3], m4 = moment[4];
        _cumulants[1] = m2;
        _cumulants[2] = m3;
        _cumulants[3] = m4 - (3 * m2 * m2);
        _cumulants[4] = moment[5] - (10 * m3 * m2);
        _cumulants[5] = moment[6] - (15 * m4 * m2) - (10 * m3 * m3) + (30 * m2 * m2 * m2);
    }

    /// <summary>Looks that were tried, and how far ln of their variance lies over that of what is sought.</summary>
    private readonly record struct Tried(HeldLooks Looks, double Over);
}
