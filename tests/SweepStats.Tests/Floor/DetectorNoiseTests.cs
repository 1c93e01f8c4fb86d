using SweepStats.Floor;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Floor;

/// <summary>Values of the noise curve that other sources give.</summary>
public sealed class DetectorNoiseTests
{
    private const double K = DetectorNoise.DecibelsPerNeper;

    [Fact]
    public void HandWorkedRisesComeOut()
    {
        // γ → 0: the rise is Kγ to first order, since ψ(M + 1) − ψ(M) = 1/M and J is 1 with probability Mγ.
        // M → ∞: K·ln(1 + γ), so a signal as strong as the noise adds 10·log10 2.
        Agreement.Relative(1e-6, K * 1e-6, new DetectorNoise(1).Rise(1e-6));
        Agreement.Relative(1e-5, K * 1e-6, new DetectorNoise(7.5).Rise(1e-6));
        Assert.Equal(10 * Math.Log10(2), new DetectorNoise(double.PositiveInfinity).Rise(1), 1e-13);
        // M = 2: E[ψ(2 + J) − ψ(2)] has the closed form ln λ + E₁(λ) + γ_E − 1 + (1 − e^−λ)/λ; at λ = 2 (γ = 1), E₁(2) =
        // 0.0489005107080611 (A&S Table 5.1).
        double two = Math.Log(2) + 0.0489005107080611 + 0.5772156649015329 - 1 + ((1 - Math.Exp(-2)) / 2);
        Assert.Equal(K * two, new DetectorNoise(2).Rise(1), 1e-12);
    }

    [Theory]
    // Recomputed apart from this code, four decimals; signal-to-noise ratio −10, 0, 10, 20 dB.
    [InlineData(1, 0.4237, 3.4596, 12.5068, 22.5068)]
    [InlineData(3, 0.4186, 3.1850, 11.0483, 20.7925)]
    [InlineData(100, 0.4141, 3.0157, 10.4319, 20.0645)]
    public void TheCheckValuesOfTheMethodComeOut(double looks, double minusTen, double zero, double ten, double twenty)
    {
        var noise = new DetectorNoise(looks);
        Agreement.Within(0.000051, minusTen, noise.Rise(0.1));
        Agreement.Within(0.000051, zero, noise.Rise(1));
        Agreement.Within(0.000051, ten, noise.Rise(10));
        Agreement.Within(0.000051, twenty, noise.Rise(100));
    }

    [Theory]
    // What a reading shows above the signal: power 10·log10(1 + 1/γ), log average K·E₁(γ), at 20, 10, 6, 3 and 0 dB; recomputed.
    [InlineData(20, 0.0432, 0.0000)]
    [InlineData(10, 0.4139, 0.0000)]
    [InlineData(6, 0.9732, 0.0168)]
    [InlineData(3, 1.7643, 0.2138)]
    [InlineData(0, 3.0103, 0.9528)]
    public void TheErrorThatNoiseAddsIsThatOfTheTrade(double snr, double power, double log)
    {
        Agreement.Within(0.000051, power, ReadingMinusSignal(new DetectorNoise(double.PositiveInfinity), snr), snr);
        Agreement.Within(0.000051, log, ReadingMinusSignal(new DetectorNoise(1), snr), snr);
    }

    [Fact]
    public void TheWholeErrorTableComesOut()
    {
        foreach (double[] row in Fixtures.Numbers("published/noise-statistics/signal-error.csv"))
        {
            Agreement.Within(0.0000011, row[1], ReadingMinusSignal(new DetectorNoise(double.PositiveInfinity), row[0]), row);
            Agreement.Within(0.0000011, row[2], ReadingMinusSignal(new DetectorNoise(1), row[0]), row);
        }
    }

    [Fact]
    public void AveragedNoiseReadsAndScattersAsTheTableSays()
    {
        foreach (double[] row in Fixtures.Numbers("published/noise-statistics/averages.csv"))
        {
            var power = new DetectorNoise(row[0]);
            Agreement.Within(0.0000051, row[1], power.LogMeanOffset, row);
            Agreement.Within(0.0000051, row[2], power.LogStandardDeviation, row);
            Agreement.Within(0.0000051, row[3], new DetectorNoise(1, row[0]).LogStandardDeviation, row);
        }
    }

    [Fact]
    public void TheTruePowerLiesAboutAnAverageAsTheTableSays()
    {
        // N times average over truth is a gamma variable of shape N.
        foreach (double[] row in Fixtures.Numbers("published/noise-statistics/averages.csv"))
        {
            Agreement.Within(0.000051, row[4], 10 * Math.Log10(row[0] / GammaDistribution.Quantile(row[0], 0.975)), row);
            Agreement.Within(0.000051, row[5], 10 * Math.Log10(row[0] / GammaDistribution.Quantile(row[0], 0.025)), row);
        }
    }

    [Fact]
    public void TheSingleLookValuesOfTheTradeComeOut()
    {
        // 2.507 and 5.570 dB: K·γ_E and K·π/√6.
        var noise = new DetectorNoise(1);
        Assert.Equal(-2.506816, noise.LogMeanOffset, 1e-6);
        Assert.Equal(5.570043, noise.LogStandardDeviation, 1e-6);
    }

    [Fact]
    public void RisesAgreeWithRTo1e9OfADecibel()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/rise.csv"))
        {
            double rise = new DetectorNoise(row[0]).Rise(Math.Pow(10, row[1] / 10));
            Agreement.Within(1e-12, row[2], rise, row);
            Agreement.Relative(2e-12, row[2], rise, row);
        }
    }

    [Fact]
    public void TheInverseAgreesWithRTo1e9OfADecibel()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/rise-inverse.csv"))
        {
            var noise = new DetectorNoise(row[0]);
            Agreement.Within(1e-9, row[2], noise.SnrInDecibels(row[1]), row);
            Agreement.Within(1e-11, row[2], noise.ExactSnrInDecibels(row[1]), row);
        }
    }

    [Fact]
    public void TheCriticalRiseAgreesWithRToThePrecisionOfItsExpansion()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/rise-critical.csv"))
        {
            // Measured: 0.08 standard deviations for one look and one reading, falling as 1/(MN) and faster.
            var noise = new DetectorNoise(row[0]);
            double deviation = noise.LogStandardDeviation / Math.Sqrt(row[1]);
            Agreement.Within(0.09 * deviation / (row[0] * row[1]), row[3], noise.CriticalRise(row[1], row[2]), row);
        }
    }

    [Fact]
    public void LooksComeBackFromTheScatterTheyMake()
    {
        foreach (double looks in (double[])[0.5, 1, 1.7, 3, 25, 640, 1e5])
        {
            Agreement.Relative(1e-12, looks, DetectorNoise.LooksFor(new DetectorNoise(looks).LogStandardDeviation), looks);
        }

        Assert.Equal(double.PositiveInfinity, DetectorNoise.LooksFor(0));
        Assert.Equal(1, DetectorNoise.LooksFor(5.570043), 1e-6);
        Assert.Throws<ArgumentOutOfRangeException>(() => DetectorNoise.LooksFor(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => DetectorNoise.LooksFor(double.NaN));
    }

    [Fact]
    public void OneReadingExceedsItsExactQuantileByTheGammaDistribution()
    {
        // A check of R's table by another way: one reading is K·ln of a gamma variable.
        foreach (double[] row in Fixtures.Numbers("oracles/rise-critical.csv").Where(row => row[1] == 1))
        {
            double exact = K * (Math.Log(GammaDistribution.Quantile(row[0], row[2])) - GammaFunctions.Digamma(row[0]));
            Agreement.Within(1e-7, exact, row[3], row);
        }
    }

    private static double ReadingMinusSignal(DetectorNoise noise, double snr) =>
        noise.Rise(Math.Pow(10, snr / 10)) + noise.LogMeanOffset - snr;
}
