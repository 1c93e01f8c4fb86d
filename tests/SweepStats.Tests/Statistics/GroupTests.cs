using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class WelchAnovaTests
{
    // R, oneway.test (fixtures/oracles/groups.R); gear: NIST handbook data, F 2.0558 on 9 and 36.547 degrees of freedom.
    [Theory]
    [InlineData("gear", "nist-gear/gear.csv", 0, 1)]
    [InlineData("dyestuff", "nested/dyestuff.csv", 0, 1)]
    public void AgreesWithReference(string set, string file, int group, int value)
    {
        double[] expected = Fixtures.Numbers(
            "oracles/groups-welch.csv")[Array.FindIndex(Fixtures.Cells("oracles/groups-welch.csv"), r => r[0] == set)];
        WelchAnova table =
            WelchAnova.Of([.. Fixtures.Cells("published/" + file).Zip(Fixtures.Numbers("published/" + file))
                .GroupBy(r => r.First[group]).Select(g => g.Select(r => r.Second[value]).ToArray())]);
        Assert.Equal(expected[1], table.F, 1e-9 * expected[1]);
        Assert.Equal(expected[2], table.BetweenDegreesOfFreedom);
        Assert.Equal(expected[3], table.WithinDegreesOfFreedom, 1e-9 * expected[3]);
        Assert.Equal(expected[4], table.Probability, 1e-9 * expected[4]);
    }

    [Fact]
    public void TwoGroupsGiveWelchsT()
    {
        // EPA Unified Guidance, example 16-1: t 5.9826 on 11.955 degrees of freedom.
        WelchAnova table = WelchAnova.Of([[560, 530, 570, 490, 510, 550, 550, 530], [600, 590, 590, 630, 610, 630]]);
        Assert.Equal(5.9826, Math.Sqrt(table.F), 5e-5);
        Assert.Equal(11.955, table.WithinDegreesOfFreedom, 5e-4);
    }

    [Fact]
    public void ShiftScaleAndOrderDoNotMatter()
    {
        double[][] groups = [[1, 2, 4], [3, 5, 6, 9], [2, 2.5]];
        double f = WelchAnova.Of(groups).F;
        Assert.Equal(f, WelchAnova.Of([.. groups.Select(g => g.Select(v => (v * 5) - 70).ToArray())]).F, 1e-10);
        Assert.Equal(f, WelchAnova.Of([.. groups.Reverse()]).F, 1e-12);
    }

    [Fact]
    public void GroupsThatTellNothingAreRefused()
    {
        Assert.Throws<ArgumentException>(() => WelchAnova.Of([[1, 2]]));
        Assert.Throws<ArgumentException>(() => WelchAnova.Of([[1, 2], [3]]));
        Assert.Throws<ArgumentException>(() => WelchAnova.Of([[1, 2], [3, 3]]));
    }
}

public sealed class FalseDiscoveryTests
{
    // Benjamini and Hochberg 1995, section 4: fifteen p-values, four rejected at 5 %, and the adjusted values by R (p.adjust).
    [Fact]
    public void ThePublishedExampleRejectsFour()
    {
        double[] adjusted =
            FalseDiscovery.Adjusted([.. Fixtures.Numbers("published/false-discovery/probabilities.csv").Select(row => row[0])]);
        double[] expected = [0.0015, 0.003, 0.0095, 0.035625, 0.0603, 0.063857, 0.063857, 0.0645, 0.0765, 0.486, 0.581182,
            0.714875, 0.753231, 0.813214, 1];
        Assert.Equal(4, adjusted.Count(p => p <= 0.05));
        Assert.All(expected.Zip(adjusted.Order()), pair => Assert.Equal(pair.First, pair.Second, 1e-6));
    }

    [Fact]
    public void OrderDoesNotMatterAndNothingFallsBelowItsOwnValue()
    {
        double[] given = [0.04, 0.001, 0.5, 0.02], adjusted = FalseDiscovery.Adjusted(given);
        Assert.Equal([adjusted[3], adjusted[2], adjusted[1], adjusted[0]], FalseDiscovery.Adjusted([0.02, 0.5, 0.001, 0.04]));
        Assert.All(given.Zip(adjusted), pair => Assert.InRange(pair.Second, pair.First, 1));
        Assert.Empty(FalseDiscovery.Adjusted([]));
        Assert.Throws<ArgumentException>(() => FalseDiscovery.Adjusted([1.1]));
    }
}

public sealed class EquivalenceTests
{
    [Fact]
    public void ThePublishedExampleIsEquivalent()
    {
        // Lakens 2017, worked example (from memory): means 5.25 and 5.22, deviations .95 and .83, n 95 and 89; t 3.1497 and
        // −2.6928 on 181.13 degrees of freedom.
        double margin = 0.43 * Math.Sqrt(((0.95 * 0.95) + (0.83 * 0.83)) / 2),
            error = Math.Sqrt((0.95 * 0.95 / 95) + (0.83 * 0.83 / 89));
        var tested = new Equivalence(0.03, error, 181.13, margin);
        Assert.Equal(0.00096, tested.ProbabilityOfLess, 5e-6);
        Assert.Equal(0.00388, tested.ProbabilityOfMore, 5e-6);
        Assert.Equal(-0.1871, tested.Interval(0.05).Low, 5e-5);
        Assert.Equal(0.2471, tested.Interval(0.05).High, 5e-5);
    }

    [Fact]
    public void TheIntervalLiesWithinTheMarginExactlyWhereBothTestsReject()
    {
        Equivalence at = Equivalence.Of([40, 41, 42, 40.5], [41, 41.5, 40.2, 41.8], 1);
        Interval interval = at.Interval(0.05);
        double least = Math.Max(Math.Abs(interval.Low), Math.Abs(interval.High));
        Assert.True((at with { Margin = least + 1e-6 }).Probability < 0.05);
        Assert.True((at with { Margin = least - 1e-6 }).Probability > 0.05);
        Assert.Equal(-at.Difference, Equivalence.Of([41, 41.5, 40.2, 41.8], [40, 41, 42, 40.5], 1).Difference, 1e-12);
        Assert.Throws<ArgumentException>(() => Equivalence.Of([1, 1], [2, 2], 1));
    }
}

public sealed class ToleranceLimitTests
{
    // Exact factors recomputed by R and by integration (fixtures/published/tolerance-factors); ISO 16269-6 prints the same to
    // three decimals (from memory).
    [Fact]
    public void OneSidedFactorsAgreeToFourDecimalsFromTwoToHundred()
    {
        foreach (double[] row in Fixtures.Numbers("published/tolerance-factors/factors.csv"))
        {
            Assert.Equal(row[3], ToleranceLimit.NormalFactor((int)row[0], row[1], row[2]), 5e-5);
        }
    }

    [Fact]
    public void WithoutADistributionSoManySpecimensAreNeeded()
    {
        // Wilks 1941 (from memory).
        Assert.Equal(59, ToleranceLimit.FewestWithoutDistribution(0.95, 0.95));
        Assert.Equal(29, ToleranceLimit.FewestWithoutDistribution(0.90, 0.95));
        Assert.Equal(299, ToleranceLimit.FewestWithoutDistribution(0.99, 0.95));
        Assert.Equal(93, ToleranceLimit.FewestBetweenExtremes(0.95, 0.95));
        Assert.Equal(46, ToleranceLimit.FewestBetweenExtremes(0.90, 0.95));
        Assert.Equal(77, ToleranceLimit.FewestBetweenExtremes(0.95, 0.90));
    }

    [Theory]
    [InlineData(58, 0)]
    [InlineData(59, 1)]
    [InlineData(92, 1)]
    [InlineData(93, 2)]
    [InlineData(124, 3)]
    public void TheRankRisesWithTheSpecimens(int count, int rank) =>
    Assert.Equal(rank, ToleranceLimit.RankWithoutDistribution(count, 0.95, 0.95));

    [Fact]
    public void ASampleOfOneHasNoLimit() =>
    Assert.Throws<ArgumentOutOfRangeException>(() => ToleranceLimit.NormalFactor(1, 0.95, 0.95));
}

public sealed class GroupConsistencyTests
{
    // ISO 5725-2:1994, tables 4 to 7, formulas from memory, recomputed (fixtures/published/iso-5725).
    [Fact]
    public void CriticalValuesOfScatterAgreeToFourDecimals()
    {
        foreach (double[] row in Fixtures.Numbers("published/iso-5725/cochran-and-k.csv"))
        {
            (int p, int n) = ((int)row[0], (int)row[1]);
            Assert.Equal(row[2], GroupConsistency.Cochran(p, n, 0.01), 1e-4);
            Assert.Equal(row[3], GroupConsistency.Cochran(p, n, 0.05), 1e-4);
            Assert.Equal(row[5], GroupConsistency.MandelK(p, n, 0.01), 1e-4);
            Assert.Equal(row[6], GroupConsistency.MandelK(p, n, 0.05), 1e-4);
        }
    }

    [Fact]
    public void CriticalValuesOfMeansAgreeToFourDecimals()
    {
        foreach (double[] row in Fixtures.Numbers("published/iso-5725/grubbs-and-h.csv"))
        {
            Assert.Equal(row[6], GroupConsistency.MandelH((int)row[0], 0.01), 1e-4);
            Assert.Equal(row[7], GroupConsistency.MandelH((int)row[0], 0.05), 1e-4);
        }
    }
}
