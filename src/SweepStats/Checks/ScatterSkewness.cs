using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// How skewed the error of the shielding is, in the units of one reading: 0 where reference and covered readings are skewed
/// alike, however much.
/// </summary>
/// <remarks>
/// Third cumulants of independent errors add, those of the covered level with the other sign:
/// γ = (γᵣσᵣ³ − γ꜀σ꜀³)/(σᵣ² + σ꜀²)^1.5. The skewness of a reading follows from that of the rests about the mean of n, which is
/// (n − 2)/√(n(n − 1)) times it (independent readings; worked out here). Assumes as many reference as covered sweeps.
/// </remarks>
internal static class ScatterSkewness
{
    /// <summary>
    /// Beyond this a t interval from 3 to 10 readings of one skewed role holds less than 92 % instead of 95 %; two roles
    /// skewed alike 95 to 99 % (gamma variables, 40 000 trials each, worked out with fixtures/oracles/skewed-intervals.R).
    /// </summary>
    public const double Material = 1.4;

    /// <summary>
    /// The skewness γ of a difference of two readings; negative where the shielding comes out too small now and then.
    /// </summary>
    /// <param name="groups">Sweeps that repeat each other.</param>
    /// <param name="standardised">Rests of a group against the scatter of their neighbourhood.</param>
    public static double Of(IEnumerable<RepeatGroup> groups, Func<RepeatGroup, double[]> standardised)
    {
        ILookup<bool, RepeatGroup> byRole = groups.ToLookup(g => g.Role == SweepRole.Reference);
        (double Third, double Variance) reference = Cumulants(byRole[true], standardised);
        (double Third, double Variance) covered = Cumulants(byRole[false], standardised);
        double variance = reference.Variance + covered.Variance;
        return variance > 0 ? (reference.Third - covered.Third) / Math.Pow(variance, 1.5) : 0;
    }

    private static (double Third, double Variance) Cumulants(
        IEnumerable<RepeatGroup> groups, Func<RepeatGroup, double[]> standardised)
    {
        double skewness = 0;
        double squares = 0;
        int count = 0;
        foreach (RepeatGroup group in groups)
        {
            double[] rests = standardised(group);
            if (rests.Length < 2)
            {
                continue;
            }

            int n = group.Sweeps.Length;
            double ofRests = Moments.SkewnessAndExcess(rests).Skewness;
            skewness += rests.Length * ofRests * Math.Sqrt(n * (n - 1.0)) / (n - 2);
            squares += rests.Length * Variance(group);
            count += rests.Length;
        }

        double variance = count == 0 ? 0 : squares / count;
        return count == 0 ? (0, 0) : (skewness / count * Math.Pow(variance, 1.5), variance);
    }

    private static double Variance(RepeatGroup group)
    {
        double squares = 0;
        for (int p = 0; p < group.Points.Length; p++)
        {
            double[] away = Deviations.FromMean([.. group.Sweeps.Select(s => s.RestDb[p])]);
            squares += Deviations.Product(away, away);
        }

        return squares / group.Points.Length / (group.Sweeps.Length - 1);
    }
}
