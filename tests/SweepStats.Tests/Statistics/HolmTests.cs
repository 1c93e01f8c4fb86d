using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class HolmTests
{
    [Fact]
    public void FourTestsAreAdjustedAsByHand()
    {
        // Sorted 0.01, 0.02, 0.02, 0.3 times 4, 3, 2, 1: 0.04, 0.06, 0.04 raised to 0.06, 0.3.
        double[] adjusted = Holm.Adjusted([0.02, 0.3, 0.01, 0.02]);
        Agreement.Within(1e-15, 0.06, adjusted[0]);
        Agreement.Within(1e-15, 0.3, adjusted[1]);
        Agreement.Within(1e-15, 0.04, adjusted[2]);
        Agreement.Within(1e-15, 0.06, adjusted[3]);
    }

    [Fact]
    public void ThreeOfTheFifteenPublishedTestsAreRejected()
    {
        // Benjamini and Hochberg 1995, section 4; adjusted values of the first five by R's p.adjust(p, "holm"): 0.0015 0.0056
        // 0.0247 0.114 0.2211.
        double[] adjusted =
            Holm.Adjusted([.. Fixtures.Numbers("published/false-discovery/probabilities.csv").Select(row => row[0])]);
        Assert.Equal(3, adjusted.Count(p => p <= 0.05));
        double[] expected = [0.0015, 0.0056, 0.0247, 0.114, 0.2211];
        for (int i = 0; i < expected.Length; i++)
        {
            Agreement.Relative(1e-13, expected[i], adjusted[i], i);
        }

        Assert.Equal(1, adjusted[^1]);
    }

    [Fact]
    public void TheOrderGivenIsKept()
    {
        double[] probabilities = [0.04, 0.001, 0.2, 0.03, 0.004];
        double[] adjusted = Holm.Adjusted(probabilities);
        double[] turned = Holm.Adjusted([.. probabilities.Reverse()]);
        Assert.Equal(adjusted, turned.Reverse());
    }

    [Fact]
    public void AdjustingLiesBetweenNothingAndBonferroni()
    {
        double[] probabilities = [0.04, 0.001, 0.2, 0.03, 0.004, 1, 0];
        double[] adjusted = Holm.Adjusted(probabilities);
        for (int i = 0; i < adjusted.Length; i++)
        {
            Assert.InRange(adjusted[i], probabilities[i], Math.Min(1, 7 * probabilities[i]));
        }
    }

    [Fact]
    public void OneTestIsLeftAloneAndNoneIsNoError()
    {
        Assert.Equal([0.03], Holm.Adjusted([0.03]));
        Assert.Empty(Holm.Adjusted([]));
    }

    [Fact]
    public void WhatIsNoProbabilityIsRefused()
    {
        Assert.Throws<ArgumentException>(() => Holm.Adjusted([0.1, -0.1]));
        Assert.Throws<ArgumentException>(() => Holm.Adjusted([double.NaN]));
    }
}
