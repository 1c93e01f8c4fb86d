using MathNet.Numerics.Distributions;

namespace SweepStats.Statistics;

/// <summary>
/// Whether a sample can come from a normal distribution of unknown mean and scatter; most watchful in the tails.
/// </summary>
/// <remarks>
/// Formula: A² = −n − (1/n)Σ(2i − 1)[ln Φ(zᵢ) + ln Φ(−z₍ₙ₊₁₋ᵢ₎)] over the sorted z = (x − mean)/s. Dimensionless. Assumes
/// independent values; values rounded coarsely against their scatter look less normal than they are. Not a number where the
/// values have no scatter. Source: D'Agostino and Stephens 1986, Goodness-of-Fit Techniques, section 4.8 and table 4.9 (from
/// memory). Error: A² 1e-12.
/// </remarks>
internal sealed record AndersonDarling
{
    private AndersonDarling()
    {
    }

    /// <summary>A².</summary>
    public required double Statistic { get; init; }

    /// <summary>A²(1 + 0.75/n + 2.25/n²), whose distribution no longer depends on n.</summary>
    public required double Adjusted { get; init; }

    /// <summary>
    /// Probability of an adjusted statistic at least as large for a normal sample, by the published fit in four pieces.
    /// </summary>
    /// <remarks>
    /// The pieces do not quite meet: at 0.2, 0.34 and 0.6 the probability jumps by up to 0.003. From 10 on it stays at
    /// 3.7e-24.
    /// </remarks>
    public double Probability => Fit(Adjusted);

    /// <summary>Tests a sample.</summary>
    /// <param name="values">The sample, in any order.</param>
    /// <exception cref="ArgumentException">
    /// Fewer than eight values, for which the probability does not hold, or one that is not finite.
    /// </exception>
    public static AndersonDarling Of(ReadOnlySpan<double> values)
    {
        FiniteValues.Require(values, 8, nameof(values));
        double[] z = Deviations.FromMean(values);
        double scale = Math.Sqrt(Deviations.Product(z, z) / (z.Length - 1));
        Ascending.Sort(z);
        int n = z.Length;
        var logs = new LogTails[n];
        for (int i = 0; i < n; i++)
        {
            logs[i] = LogTails.Of(z[i] / scale);
        }

        var sum = new CompensatedSum();
        for (int i = 0; i < n; i++)
        {
            sum.Add(((2 * i) + 1) * (logs[i].Below + logs[n - 1 - i].Above));
        }

        double statistic = -n - (sum.Value / n);
        return new AndersonDarling { Statistic = statistic, Adjusted = statistic * (1 + (0.75 / n) + (2.25 / n / n)) };
    }

    /// <summary>Probability to an adjusted statistic.</summary>
    internal static double Fit(double adjusted) => adjusted switch
    {
        double.NaN => double.NaN,
        < 0.2 => 1 - Math.Exp(-13.436 + (101.14 * adjusted) - (223.73 * adjusted * adjusted)),
        < 0.34 => 1 - Math.Exp(-8.318 + (42.796 * adjusted) - (59.938 * adjusted * adjusted)),
        < 0.6 => Math.Exp(0.9177 - (4.279 * adjusted) - (1.38 * adjusted * adjusted)),
        < 10 => Math.Exp(1.2937 - (5.709 * adjusted) + (0.0186 * adjusted * adjusted)),
        _ => Math.Exp(1.2937 - 57.09 + 1.86),
    };

    // Logarithms of the chances below and above a standard normal z, both by that of the tail it stands in.
    private readonly record struct LogTails(double Below, double Above)
    {
        /// <summary>Both logarithms, exact into tails that no double holds.</summary>
        public static LogTails Of(double z)
        {
            double outside = -Math.Abs(z), tail = Normal.CDF(0, 1, outside);
            double within = double.LogP1(-tail), beyond = outside > -30 ? Math.Log(tail) : LogFar(outside);
            return z > 0 ? new LogTails(within, beyond) : z < 0 ? new LogTails(beyond, within) : new LogTails(beyond, beyond);
        }

        // Farther out the tail falls below the smallest double: Abramowitz and Stegun 26.2.12, what is left out is below 945/z¹⁰
        // = 2e-12.
        private static double LogFar(double z)
        {
            double w = 1 / (z * z);
            return (-z * z / 2) - Math.Log(-z * Math.Sqrt(2 * Math.PI))
                + double.LogP1(-w * (1 - (3 * w * (1 - (5 * w * (1 - (7 * w)))))));
        }
    }
}
