using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class GammaDistributionTests
{
    [Fact]
    public void OneLookIsExponential()
    {
        // Shape 1: P(X ≤ x) = 1 − e^−x; at x = 1e-12 that is x − x²/2.
        foreach (double x in (double[])[0.01, 0.3, 0.5, 2.5, 7])
        {
            Agreement.Relative(1e-12, x, GammaDistribution.Quantile(1, 1 - Math.Exp(-x)), x);
        }

        Agreement.Relative(1e-14, 1e-12 + 5e-25, GammaDistribution.Quantile(1, 1e-12));
        Agreement.Relative(1e-14, 1e-12 - 5e-25, GammaDistribution.Cdf(1, 1e-12));
        Assert.Equal(1 - Math.Exp(-2), GammaDistribution.Cdf(1, 2), 1e-15);
    }

    [Fact]
    public void ThePublishedIntervalsOfAveragedNoiseComeOut()
    {
        // The true mean lies within N/q(1 − α/2) and N/q(α/2) of the power average, q of shape N.
        foreach (double[] row in Fixtures.Numbers("published/noise-statistics/averages.csv"))
        {
            double n = row[0];
            Agreement.Within(0.00006, row[4], 10 * Math.Log10(n / GammaDistribution.Quantile(n, 0.975)), row);
            Agreement.Within(0.00006, row[5], 10 * Math.Log10(n / GammaDistribution.Quantile(n, 0.025)), row);
        }
    }

    [Fact]
    public void QuantilesAgreeWithRDownToTheSmallest()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/quantiles-gamma.csv"))
        {
            Agreement.Relative(3e-12, row[2], GammaDistribution.Quantile(row[0], row[1]), row);
        }
    }

    [Fact]
    public void ProbabilitiesAgreeWithR()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/quantiles-gamma.csv"))
        {
            Agreement.Relative(row[0] <= 1000 ? 3e-12 : 1e-9, row[1], GammaDistribution.Cdf(row[0], row[2]), row);
        }
    }

    [Fact]
    public void QuantileAndProbabilityUndoEachOtherAndRise()
    {
        foreach (double shape in (double[])[0.3, 1, 2.5, 12, 345])
        {
            double last = 0;
            for (double p = 0.02; p < 0.99; p += 0.03)
            {
                double x = GammaDistribution.Quantile(shape, p);
                Assert.True(x > last);
                Agreement.Relative(1e-11, p, GammaDistribution.Cdf(shape, x), shape, p);
                last = x;
            }
        }
    }

    [Fact]
    public void TheEndsAreZeroAndOne()
    {
        Assert.Equal(0, GammaDistribution.Cdf(2, 0));
        Assert.Equal(1, GammaDistribution.Cdf(2, double.PositiveInfinity));
        // 1e-4 of a variable of shape 0.01 lies below 1e-400, which no double holds.
        Assert.Equal(0, GammaDistribution.Quantile(0.01, 1e-4));
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaDistribution.Cdf(0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaDistribution.Cdf(1, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaDistribution.Quantile(1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaDistribution.Quantile(1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaDistribution.Quantile(double.PositiveInfinity, 0.5));
    }
}
