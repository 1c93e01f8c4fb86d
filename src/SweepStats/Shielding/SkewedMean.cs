using SweepStats.Floor;
using SweepStats.Statistics;
using Normal = MathNet.Numerics.Distributions.Normal;

namespace SweepStats.Shielding;

/// <summary>
/// How the limits of a covered mean differ from Student's, since log readings fall further below their mean than they rise above
/// it.
/// </summary>
/// <remarks>
/// Where a few readings of a skewed variable lie high they also lie close together: Student's limit below the mean is then passed
/// too often, the one above it too rarely. With γ the skewness of the mean and z the normal quantile, the first term of
/// Edgeworth's expansion moves a quantile of the studentised mean by γ(2z²+1)/6; as a share of z, c = |γ|(2z²+1)/(6z), it serves
/// few readings too, where the same term taken at Student's t runs away. The reach below the mean is 1 + c times Student's,
/// within 10 % of the true quantile from 3 to 20 readings (fixtures/oracles/skewness.R). The reach above it falls to 1/(1 + ¾c),
/// a little less than the true quantile allows: it carries the claim. The skewness is that of noise and signal at the estimated
/// level; scatter beyond it is taken as symmetric and makes the mean less skewed. Source: Hall 1992, The Bootstrap and Edgeworth
/// Expansion, 2.6 (from memory); the coverage study.
/// </remarks>
/// <param name="confidence">Two-sided level.</param>
internal sealed class SkewedMean(Confidence confidence)
{
    private const double Above = 0.75;

    // Below a z of 1 the expansion has nothing to say.
    private readonly double _z = Math.Max(1, Normal.InvCDF(0, 1, confidence.TwoSidedQuantile));

    /// <summary>Skewness of the mean, negative; 0 where readings are not skewed.</summary>
    /// <param name="noise">The detector's noise.</param>
    /// <param name="covered">Readings behind the mean.</param>
    /// <param name="snrDb">Estimated signal-to-noise ratio in dB; −∞ for noise alone.</param>
    /// <param name="standardError">Standard error of the mean in dB, as the readings show it.</param>
    public static double Skewness(DetectorNoise noise, CoveredReadings covered, double snrDb, double standardError)
    {
        (double variance, double third) = noise.LogCumulants(snrDb);
        if (third == 0)
        {
            return 0;
        }

        double expected = Math.Max(
            (variance / covered.Count) + (covered.SignalDeviationDb * covered.SignalDeviationDb / covered.Units),
            standardError * standardError);
        return third / ((double)covered.Count * covered.Count) / (expected * Math.Sqrt(expected));
    }

    /// <summary>Factors on Student's reach below and above the mean; both 1 where readings are not skewed.</summary>
    public (double Below, double Above) Reach(double skewness)
    {
        double c = Math.Abs(skewness) * ((2 * _z * _z) + 1) / (6 * _z);
        return (1 + c, 1 / (1 + (Above * c)));
    }
}
