using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CandidateMeanTests
{
    private static readonly CandidateMean High = new(51.2, 0.4, 6, false), Low = new(50, 0.5, 4, false);

    // Welch by hand: 0.25 + 0.16 = 0.41; 0.41²/(0.25²/4 + 0.16²/6) = 8.4507.
    [Fact]
    public void TwoOwnErrorsMakeWelchsT()
    {
        (double t, double dof) = High.Above(Low);
        Assert.Equal(1.2 / Math.Sqrt(0.41), t, 1e-12);
        Assert.Equal(0.41 * 0.41 / ((0.0625 / 4) + (0.0256 / 6)), dof, 1e-9);
        (double back, double same) = Low.Above(High);
        Assert.Equal((-t, dof), (back, same));
    }

    // One pooled scatter of eight degrees of freedom is known no better for being used twice; Welch would give sixteen.
    [Fact]
    public void OneCommonScatterCountsOnce()
    {
        CandidateMean one = new(51, 0.4, 8, false) { CommonScatter = true }, other = one with { Value = 50 };
        Assert.Equal((Math.Sqrt(0.32), 8), one.ErrorOfDifference(other), Close);
        Assert.Equal((Math.Sqrt(0.32), 16), one.ErrorOfDifference(other with { CommonScatter = false }), Close);
    }

    [Fact]
    public void WhatMovesBothAlikeDropsOut()
    {
        (CandidateMean one, CandidateMean other) =
            (High with { Shared = -0.7, Shift = 0.3 }, Low with { Shared = -0.7, Shift = 0.3 });
        Assert.Equal(High.Above(Low), one.Above(other));
        Assert.Equal(High.ErrorOfDifference(Low), one.ErrorOfDifference(other));
    }

    [Fact]
    public void WhatMovesOneMoreStaysAsAKnownError()
    {
        (double error, double dof) = (High with { Shared = 0.9 }).ErrorOfDifference(Low with { Shared = 0.3 });
        Assert.Equal(Math.Sqrt(0.41 + 0.36), error, 1e-12);
        // Of infinite degrees of freedom: it adds to the variance and not to what makes that uncertain.
        Assert.Equal(0.77 * 0.77 / ((0.0625 / 4) + (0.0256 / 6)), dof, 1e-9);
    }

    [Fact]
    public void AShiftThatDiffersCountsAgainstTheHigherOne()
    {
        Assert.Equal((1.2 - 0.5) / Math.Sqrt(0.41), (High with { Shift = 0.6 }).Above(Low with { Shift = 0.1 }).T, 1e-12);
        Assert.Equal((-1.2 - 0.5) / Math.Sqrt(0.41), (Low with { Shift = 0.1 }).Above(High with { Shift = 0.6 }).T, 1e-12);
    }

    [Fact]
    public void WithoutErrorEveryDifferenceIsClear()
    {
        CandidateMean exact = new(50, 0, 5, false);
        Assert.Equal(double.PositiveInfinity, (exact with { Value = 50.1 }).Above(exact).T);
        Assert.Equal(0, exact.Above(exact).T);
        Assert.Equal(0, exact.Above(exact with { Value = 50.1 }).T);
    }

    private static bool Close((double, double) a, (double, double) b) =>
        Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9;
}
