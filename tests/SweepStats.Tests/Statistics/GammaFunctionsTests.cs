using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class GammaFunctionsTests
{
    [Fact]
    public void KnownConstantsComeOut()
    {
        // NIST Digital Library of Mathematical Functions 5.4.12 and 5.15.1: ψ(1) = −γ, ψ₁(1) = π²/6, ψ₁(½) = π²/2, ψ₃(1) = π⁴/15.
        Agreement.Relative(1e-14, -0.5772156649015329, GammaFunctions.Digamma(1));
        Agreement.Relative(1e-14, Math.PI * Math.PI / 6, GammaFunctions.Polygamma(1, 1));
        Agreement.Relative(1e-14, Math.PI * Math.PI / 2, GammaFunctions.Polygamma(1, 0.5));
        Agreement.Relative(1e-14, Math.Pow(Math.PI, 4) / 15, GammaFunctions.Polygamma(3, 1));
    }

    [Fact]
    public void AllOrdersAgreeWithR()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/trigamma.csv"))
        {
            // ψ crosses 0 near 1.46, where only its absolute error means something.
            Agreement.Within(1e-14 * Math.Max(1, Math.Abs(row[1])), row[1], GammaFunctions.Digamma(row[0]), row);
            for (int order = 1; order <= 3; order++)
            {
                Agreement.Relative(1e-14, row[1 + order], GammaFunctions.Polygamma(order, row[0]), row);
            }
        }
    }

    [Fact]
    public void TheInverseUndoesTrigamma()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/trigamma.csv"))
        {
            Agreement.Relative(1e-13, row[0], GammaFunctions.InverseTrigamma(row[2]), row);
        }
    }

    [Fact]
    public void TheRecurrenceHolds()
    {
        // ψ₁(x) − ψ₁(x + 1) = 1/x², and the like for the other orders; across 20, where the series takes over.
        foreach (double x in (double[])[0.3, 2.2, 19.5, 25])
        {
            Agreement.Relative(1e-11, 1 / (x * x), GammaFunctions.Polygamma(1, x) - GammaFunctions.Polygamma(1, x + 1), x);
            Agreement.Relative(1e-11, -2 / (x * x * x), GammaFunctions.Polygamma(2, x) - GammaFunctions.Polygamma(2, x + 1), x);
            Agreement.Relative(1e-11, 6 / (x * x * x * x),
                GammaFunctions.Polygamma(3, x) - GammaFunctions.Polygamma(3, x + 1), x);
        }
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaFunctions.Digamma(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaFunctions.Polygamma(4, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaFunctions.Polygamma(1, -1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GammaFunctions.InverseTrigamma(0));
    }
}
