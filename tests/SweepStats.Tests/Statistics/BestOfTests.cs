using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class BestOfTests
{
    private const int Draws = 40_000;
    private static readonly double[] Means = [40, 41, 41.5];
    private static readonly double[] Errors = [2, 0.5, 0.2];

    // R, integrate() (fixtures/oracles/best-of.R).
    [Fact]
    public void SharesAgreeWithTheIntegral()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/best-of.csv"))
        {
            double[] shares = BestOf.Shares(row.AsSpan(1, 3), row.AsSpan(4, 3), row[0], 1, Draws);
            for (int i = 0; i < 3; i++)
            {
                Agreement.Within(Slack(row[7 + i]), row[7 + i], shares[i], row);
            }
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(9.5)]
    [InlineData(double.PositiveInfinity)]
    public void OfTwoItIsStudentsTailOfTheirDifference(double dof)
    {
        double first = 1 - StudentT.UpperTail((61.0 - 60) / Math.Sqrt((0.8 * 0.8) + (0.3 * 0.3)), dof);
        double[] shares = BestOf.Shares([61, 60], [0.8, 0.3], dof, 2, Draws);
        Agreement.Within(Slack(first), first, shares[0], dof);
        Assert.Equal(1, shares.Sum(), 1e-9);
    }

    [Fact]
    public void AlikeMeansShareAlikeAndTiesAreSplit()
    {
        double[] alike = BestOf.Shares([50, 50, 50], [1, 1, 1], 6, 3, Draws);
        Assert.All(alike, share => Agreement.Within(Slack(1.0 / 3), 1.0 / 3, share));
        double[] exact = BestOf.Shares([50, 48, 50], [0, 0, 0], 6, 3, 10);
        Assert.Equal(0.5, exact[0], 1e-12);
        Assert.Equal(0, exact[1]);
        Assert.Equal(0.5, exact[2], 1e-12);
        Assert.Equal([1.0], BestOf.Shares([50], [1], 6, 3, 1));
    }

    [Fact]
    public void ShiftScaleAndOrderDoAsTheyShould()
    {
        double[] shares = BestOf.Shares(Means, Errors, 5, 4, Draws);
        // Powers of two keep every comparison of the same draws.
        Assert.Equal(shares, BestOf.Shares([.. Means.Select(m => (4 * m) + 1024)], [.. Errors.Select(e => 4 * e)], 5, 4, Draws));
        double[] turned = BestOf.Shares([.. Means.Reverse()], [.. Errors.Reverse()], 5, 4, Draws);
        for (int i = 0; i < 3; i++)
        {
            Agreement.Within(Math.Sqrt(2) * Slack(shares[i]), shares[i], turned[2 - i], i);
        }
    }

    [Fact]
    public void OneSeedGivesOneAnswerAndAnotherSeedAnother()
    {
        Assert.Equal(BestOf.Shares(Means, Errors, 5, 4, 1000), BestOf.Shares(Means, Errors, 5, 4, 1000));
        Assert.NotEqual(BestOf.Shares(Means, Errors, 5, 4, 1000), BestOf.Shares(Means, Errors, 5, 5, 1000));
    }

    [Fact]
    public void AMeanThatMayLieHigherCanOnlyGainAndTheOthersOnlyLose()
    {
        double[] shares = [0.5, 0.3, 0.2];
        Assert.Equal([new Interval(0.5, 0.5), new Interval(0.3, 0.3), new Interval(0.2, 0.2)],
            BestOf.Limits(shares, [false, false, false]));
        Assert.Equal([new Interval(0, 0.5), new Interval(0.3, 1), new Interval(0, 0.2)],
            BestOf.Limits(shares, [false, true, false]));
        Assert.Equal([new Interval(0, 0.5), new Interval(0, 1), new Interval(0, 1)], BestOf.Limits(shares, [false, true, true]));
        // Wherever the open mean truly lies, the shares stay within.
        Interval[] limits = BestOf.Limits(BestOf.Shares(Means, Errors, 5, 6, Draws), [false, true, false]);
        double[] higher = BestOf.Shares([40, 43, 41.5], Errors, 5, 6, Draws);
        Assert.All(limits.Zip(higher), pair => Assert.InRange(pair.Second, pair.First.Low, pair.First.High));
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => BestOf.Shares([], [], 5, 1, 10));
        Assert.Throws<ArgumentException>(() => BestOf.Shares([1, 2], [1], 5, 1, 10));
        Assert.Throws<ArgumentException>(() => BestOf.Shares([1, 2], [1, -1], 5, 1, 10));
        Assert.Throws<ArgumentException>(() => BestOf.Shares([1, double.PositiveInfinity], [1, 1], 5, 1, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => BestOf.Shares([1, 2], [1, 1], 0, 1, 10));
        Assert.Throws<ArgumentOutOfRangeException>(() => BestOf.Shares([1, 2], [1, 1], 5, 1, 0));
        Assert.Throws<ArgumentException>(() => BestOf.Limits([1], [true, false]));
    }

    private static double Slack(double share) => (4.5 * Math.Sqrt(share * (1 - share) / Draws)) + 1e-9;
}
