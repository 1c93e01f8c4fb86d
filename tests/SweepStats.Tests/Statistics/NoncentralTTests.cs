using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class NoncentralTTests
{
    [Fact]
    public void AtZeroItIsTheNormalTailOfTheNoncentrality()
    {
        // T < 0 exactly where Z < −δ, whatever the scale: Φ(−1) = 0.158655253931457, Φ(−2) = 0.022750131948179 (Abramowitz and
        // Stegun, Table 26.1).
        Assert.Equal(0.158655253931457, NoncentralT.Cdf(0, 4.5, 1), 1e-14);
        Assert.Equal(0.022750131948179, NoncentralT.Cdf(0, 300, 2), 1e-14);
    }

    [Fact]
    public void WithoutNoncentralityItIsStudents()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/quantiles-t.csv").Where(row => row[0] >= 1 && row[1] > 1e-7))
        {
            Agreement.Within(2e-14, row[1], NoncentralT.Cdf(row[2], row[0], 0), row);
        }
    }

    [Fact]
    public void ProbabilitiesAgreeWithRsIntegral()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/quantiles-noncentral-t.csv"))
        {
            Agreement.Within(1e-13, row[3], NoncentralT.Cdf(row[2], row[0], row[1]), row);
        }
    }

    [Fact]
    public void ProbabilitiesAgreeWithRsSeriesToItsOwnError()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/quantiles-noncentral-t.csv"))
        {
            Agreement.Within(1e-11, row[4], NoncentralT.Cdf(row[2], row[0], row[1]), row);
        }
    }

    [Fact]
    public void QuantilesAgreeWithR()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/quantiles-noncentral-t-inverse.csv"))
        {
            Agreement.Within(1e-11 * (1 + Math.Abs(row[3])), row[3], NoncentralT.Quantile(row[2], row[0], row[1]), row);
        }
    }

    [Fact]
    public void DetectionLimitsAgreeWithTheTableOfTheTrade()
    {
        // Currie 1995 (IUPAC): critical t and noncentrality at α = β = 0.05, recomputed.
        foreach (double[] row in Fixtures.Numbers("published/detection-limit/noncentrality.csv"))
        {
            Agreement.Within(0.00051, row[1], StudentT.Quantile(0.95, row[0]), row);
            Agreement.Within(0.00051, row[2], NoncentralT.DetectionNoncentrality(0.05, 0.05, row[0]), row);
        }
    }

    [Fact]
    public void DetectionLimitsAgreeWithR()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/quantiles-detection.csv"))
        {
            Agreement.Relative(1e-11, row[3], NoncentralT.DetectionNoncentrality(row[1], row[2], row[0]), row);
        }
    }

    [Fact]
    public void ToleranceFactorsAgreeWithTheStandardsTable()
    {
        // ISO 16269-6: one-sided factors t(confidence; n − 1, z√n)/√n; 2.911 at n = 10 for 95/95 from memory, the rest
        // recomputed.
        foreach (double[] row in Fixtures.Numbers("published/tolerance-factors/one-sided.csv"))
        {
            double root = Math.Sqrt(row[0]);
            double z = StudentT.Quantile(row[1], double.PositiveInfinity);
            Agreement.Within(0.00000051, row[3], NoncentralT.Quantile(row[2], row[0] - 1, z * root) / root, row);
        }
    }

    [Fact]
    public void KnownScatterMakesTheDetectionLimitTwoNormalQuantiles()
    {
        // Currie 1968: 3.29 for α = β = 0.05, that is 2 × 1.644854.
        Assert.Equal(2 * 1.6448536269514722, NoncentralT.DetectionNoncentrality(0.05, 0.05, double.PositiveInfinity), 1e-13);
        Assert.Equal(2 * 1.6448536269514722, NoncentralT.DetectionNoncentrality(0.05, 0.05, 1e9), 1e-7);
    }

    [Fact]
    public void QuantileAndProbabilityUndoEachOther()
    {
        foreach (double dof in (double[])[1, 2, 19, 1e5, double.PositiveInfinity])
        {
            foreach (double delta in (double[])[-30, 0, 4, 100])
            {
                foreach (double p in (double[])[1e-6, 0.05, 0.5, 0.999])
                {
                    Agreement.Within(1e-12, p, NoncentralT.Cdf(NoncentralT.Quantile(p, dof, delta), dof, delta), dof, delta, p);
                }
            }
        }
    }

    [Fact]
    public void TurningTheSignTurnsTheTail()
    {
        Assert.Equal(1 - NoncentralT.Cdf(1.7, 6.5, 2.2), NoncentralT.Cdf(-1.7, 6.5, -2.2), 1e-14);
    }

    [Fact]
    public void ProbabilityRisesWithTAndFallsWithNoncentrality()
    {
        for (double t = -3; t < 8; t += 0.5)
        {
            Assert.True(NoncentralT.Cdf(t, 5, 2) < NoncentralT.Cdf(t + 0.5, 5, 2));
            Assert.True(NoncentralT.Cdf(t, 5, 2) > NoncentralT.Cdf(t, 5, 2.5));
        }
    }

    [Fact]
    public void RarerMissesAndFewerRepeatsNeedMoreSignal()
    {
        Assert.True(NoncentralT.DetectionNoncentrality(0.05, 0.01, 9) > NoncentralT.DetectionNoncentrality(0.05, 0.05, 9));
        Assert.True(NoncentralT.DetectionNoncentrality(0.01, 0.05, 9) > NoncentralT.DetectionNoncentrality(0.05, 0.05, 9));
        Assert.True(NoncentralT.DetectionNoncentrality(0.05, 0.05, 2) > NoncentralT.DetectionNoncentrality(0.05, 0.05, 3));
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralT.Cdf(1, 0, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralT.Cdf(double.NaN, 3, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralT.Cdf(1, 3, double.PositiveInfinity));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralT.Cdf(1, 0.9, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralT.Quantile(1, 3, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralT.DetectionNoncentrality(1e-6, 0.05, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => NoncentralT.DetectionNoncentrality(0.05, 0, 3));
    }
}
