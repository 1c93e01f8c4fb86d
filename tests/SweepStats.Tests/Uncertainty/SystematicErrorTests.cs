using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Uncertainty;

public sealed class SystematicErrorTests
{
    [Theory]
    [InlineData(ErrorDistribution.Rectangular, 0.95)]
    [InlineData(ErrorDistribution.Triangular, 0.77639)]
    [InlineData(ErrorDistribution.Arcsine, 0.99692)]
    [InlineData(ErrorDistribution.Normal, 0.97998)]
    public void OneErrorHasItsOwnQuantile(ErrorDistribution distribution, double expected)
    {
        // 97.5 % of a half-width of 1: 0.95; 1 − √0.05; sin(0.475π); 1.95996/2, by hand.
        var error = new SystematicError([Entry(1, distribution)]);
        Assert.Equal(expected, error.Quantile(0.975), 0.002);
        Assert.Equal(-expected, error.Quantile(0.025), 0.002);
        Assert.Equal(0, error.Quantile(0.5), 0.002);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(5)]
    public void TheQuantileGoesAlongWithTheScale(double halfWidth)
    {
        var error = new SystematicError([Entry(halfWidth, ErrorDistribution.Rectangular)]);
        Assert.Equal(0.95 * halfWidth, error.Quantile(0.975), 0.002 * halfWidth);
    }

    [Fact]
    public void TwoEqualRectanglesMakeATriangle()
    {
        var error = new SystematicError([Entry(1, ErrorDistribution.Rectangular), Entry(1, ErrorDistribution.Rectangular)]);
        Assert.Equal(2 * (1 - Math.Sqrt(0.05)), error.Quantile(0.975), 0.004);
        Assert.Equal(Math.Sqrt(2.0 / 3), error.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void WhatIsCommonCancelsAndWhatIsNotCountsTwice()
    {
        UncertaintyEntry both = Entry(1, ErrorDistribution.Rectangular) with { ActsOn = ErrorActsOn.Both };
        Assert.Equal(0, new SystematicError([both with { Common = true }]).StandardUncertainty);
        Assert.Equal(0, new SystematicError([both with { Common = true }]).Quantile(0.975));
        Assert.Equal(Math.Sqrt(2.0 / 3), new SystematicError([both]).StandardUncertainty, 1e-12);
    }

    [Fact]
    public void WidenedHalvesAgreeWithDrawsOfTheSum()
    {
        var random = new RandomSource(9);
        foreach ((double scale, int freedom) in new[] { (0.1, 2), (0.5, 4), (1.0, 3), (2.0, 8), (0.3, 1000) })
        {
            foreach (ErrorDistribution distribution in new[] { ErrorDistribution.Rectangular, ErrorDistribution.Arcsine,
                ErrorDistribution.Normal })
            {
                UncertaintyEntry entry = Entry(1, distribution);
                double half = StudentT.Quantile(0.975, freedom) * scale;
                double whole = new SystematicError([entry]).Widened(0.975).Half(half, freedom);
                var student = new StudentSpread(scale, freedom);
                int inside =
                    Enumerable.Range(0, 40_000).Count(_ => Math.Abs(student.Draw(random) + entry.Spread.Draw(random)) <= whole);
                // 4 binomial deviations of 95 % in 40 000 are 0.44 %.
                Assert.Equal(0.95, inside / 40_000.0, 0.006);
            }
        }
    }

    [Fact]
    public void WithoutErrorsNothingIsWidenedAndWithoutScatterTheQuantileRemains()
    {
        Assert.Equal(1.7, SystematicError.None.Widened(0.975).Half(1.7, 3));
        var error = new SystematicError([Entry(1, ErrorDistribution.Rectangular)]);
        Assert.Equal(0.95, error.Widened(0.975).Half(0, 3), 0.003);
        Assert.Equal(double.PositiveInfinity, error.Widened(0.975).Half(double.PositiveInfinity, 3));
        // Far smaller than the scatter it hardly matters.
        Assert.InRange(error.Widened(0.975).Half(100, 5), 100, 100.02);
    }

    [Fact]
    public void HalvesScaleWithTheirErrors()
    {
        var one = new SystematicError([Entry(1, ErrorDistribution.Rectangular)]);
        var three = new SystematicError([Entry(3, ErrorDistribution.Rectangular)]);
        Assert.Equal(3 * one.Widened(0.975).Half(0.8, 4), three.Widened(0.975).Half(2.4, 4), 1e-9);
    }

    private static UncertaintyEntry Entry(double half, ErrorDistribution distribution) =>
        new() { Name = "error", HalfWidthDb = half, Distribution = distribution };
}
