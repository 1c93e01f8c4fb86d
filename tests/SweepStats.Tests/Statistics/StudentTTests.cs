using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class StudentTTests
{
    [Fact]
    public void OneAndTwoDegreesOfFreedomHaveClosedForms()
    {
        // ν = 1: tan(π(p − 1/2)). ν = 2: a√(2/(1 − a²)) with a = 2p − 1.
        foreach (double p in (double[])[0.6, 0.75, 0.9, 0.975, 0.9995])
        {
            Agreement.Relative(1e-13, Math.Tan(Math.PI * (p - 0.5)), StudentT.Quantile(p, 1), p);
            double a = (2 * p) - 1;
            Agreement.Relative(1e-13, a * Math.Sqrt(2 / (1 - (a * a))), StudentT.Quantile(p, 2), p);
        }
    }

    [Fact]
    public void TheTableOfTheUncertaintyGuideComesOut()
    {
        // JCGM 100:2008, Table G.2, from memory.
        foreach (double[] row in Fixtures.Numbers("published/student-t/table-g2.csv"))
        {
            Agreement.Within(0.0051, row[1], StudentT.Quantile(0.97725, row[0]), row);
            Agreement.Within(0.0051, row[2], StudentT.Quantile(0.975, row[0]), row);
            Agreement.Within(0.0051, row[3], StudentT.Quantile(0.995, row[0]), row);
        }
    }

    [Fact]
    public void QuantilesAgreeWithROverAllDegreesOfFreedom()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/quantiles-t.csv"))
        {
            Agreement.Relative(1e-12, row[2], StudentT.Quantile(row[1], row[0]), row);
        }
    }

    [Fact]
    public void TailsAgreeWithR()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/quantiles-t.csv"))
        {
            // The lower tail below the middle, the upper one above: 1 − p itself holds too few digits of a small tail.
            double tail = row[1] < 0.5 ? StudentT.UpperTail(-row[2], row[0]) : StudentT.UpperTail(row[2], row[0]);
            Agreement.Relative(1e-11, row[1] < 0.5 ? row[1] : 1 - row[1], tail, row);
        }

        Assert.Equal(0.5, StudentT.UpperTail(0, 7), 1e-15);
        Assert.Equal(0.024997895148220435, StudentT.UpperTail(1.96, double.PositiveInfinity), 1e-15);
        Assert.Equal(1, StudentT.UpperTail(1.3, 4.4) + StudentT.UpperTail(-1.3, 4.4), 1e-15);
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.UpperTail(1, 0));
    }

    [Fact]
    public void QuantilesAreOddAboutTheMiddle()
    {
        Assert.Equal(0, StudentT.Quantile(0.5, 3.3));
        Assert.Equal(-StudentT.Quantile(0.75, 3.3), StudentT.Quantile(0.25, 3.3));
    }

    [Fact]
    public void QuantilesRiseWithProbabilityAndFallWithDegreesOfFreedom()
    {
        foreach (double dof in (double[])[0.5, 3, 40, 999.9, 1000, 2e6])
        {
            double last = double.NegativeInfinity;
            for (double p = 0.001; p < 1; p += 0.001)
            {
                double t = StudentT.Quantile(p, dof);
                Assert.True(t > last, $"p {p}, {dof} degrees of freedom");
                last = t;
            }
        }

        double above = double.PositiveInfinity;
        for (double dof = 0.5; dof < 1e7; dof *= 1.3)
        {
            double t = StudentT.Quantile(0.975, dof);
            Assert.True(t < above, $"{dof} degrees of freedom");
            above = t;
        }
    }

    [Fact]
    public void KnownScatterGivesTheNormalQuantile()
    {
        // Abramowitz and Stegun, Table 26.5: 1.959963984540054.
        Assert.Equal(1.959963984540054, StudentT.Quantile(0.975, double.PositiveInfinity), 1e-14);
    }

    [Theory]
    [InlineData(0, 5)]
    [InlineData(1, 5)]
    [InlineData(double.NaN, 5)]
    [InlineData(0.5, 0)]
    [InlineData(0.5, double.NaN)]
    public void WhatHasNoAnswerIsRefused(double probability, double dof)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentT.Quantile(probability, dof));
    }
}
