using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CensoredAnovaTests
{
    [Fact]
    public void WithoutBoundsItIsFishersF()
    {
        double[] values = [1, 2, 3, 5, 6, 7, 8];
        int[] groups = [0, 0, 0, 1, 1, 1, 1];
        Assert.Equal(OneWayAnova.Of(values, groups).Probability,
            CensoredAnova.Of(values, new bool[7], groups)!.ProbabilityOfEqualScatter, 1e-9);
    }

    // Shown in whole steps two values of a lot agree to the last digit but rounding, beside a bound.
    [Fact]
    public void ValuesThatOnlyRoundingTellsApartStillHaveAProbability()
    {
        double[] values = [67.60231977492339, 67.60231977492333, 61.64324597927331, 67.18479129743497, 66.91237765622984,
            66.3802301686109, 66.2496107006793];
        bool[] bounds = [false, false, true, false, false, false, false];
        Assert.InRange(CensoredAnova.Of(values, bounds, [0, 0, 0, 1, 1, 1, 2])!.Probability, 0, 1);
    }

    // R, survreg of survival (fixtures/oracles/censored.R).
    [Theory]
    [InlineData("some")]
    [InlineData("many")]
    public void TheRatioAgreesWithReference(string set)
    {
        double[] expected = Fixtures.Numbers(
            "oracles/censored-fits.csv")[Array.FindIndex(Fixtures.Cells("oracles/censored-fits.csv"), r => r[0] == set)];
        double[][] rows = [.. Fixtures.Numbers("oracles/censored-values.csv").Zip(Fixtures.Cells("oracles/censored-values.csv"))
            .Where(r => r.Second[0] == set).Select(r => r.First)];
        CensoredAnova tested =
            CensoredAnova.Of([.. rows.Select(r => r[1])], [.. rows.Select(r => r[2] == 1)], [.. rows.Select(r => (int)r[3])])!;
        Assert.Equal(2 * (expected[5] - expected[8]), tested.LikelihoodRatio, 1e-8);
    }

    // 4 000 draws: 5 % is known to 0.35 % (one binomial deviation).
    [Theory]
    [InlineData(3, 3, 99)]
    [InlineData(3, 3, 0.5)]
    [InlineData(3, 5, 0)]
    [InlineData(2, 4, 0.5)]
    [InlineData(4, 6, -0.5)]
    public void AlikeGroupsAreTakenForDifferentInFivePercentAtMost(int lots, int each, double cap)
    {
        const int Draws = 4000;
        int[] groups = [.. Enumerable.Range(0, lots * each).Select(i => i / each)];
        var random = new RandomSource(23);
        int alarms = 0;
        for (int draw = 0; draw < Draws; draw++)
        {
            double[] values = [.. groups.Select(_ => random.Normal())];
            bool[] censored = [.. values.Select(v => v > cap)];
            alarms += CensoredAnova.Of([.. values.Select(v => Math.Min(v, cap))], censored, groups)?.Probability < 0.05 ? 1 : 0;
        }

        Assert.True(alarms <= Draws * 0.0605, $"{100.0 * alarms / Draws:0.0} %");
    }

    [Fact]
    public void AGroupOfBoundsFarAboveTheOthersIsFound()
    {
        double[] values = [40, 41, 39.5, 40.2, 50, 50, 50, 50];
        bool[] censored = [false, false, false, false, true, true, true, true];
        Assert.True(CensoredAnova.Of(values, censored, [0, 0, 0, 0, 1, 1, 1, 1])!.Probability < 0.05);
    }

    [Fact]
    public void TooFewValuesTellNothing()
    {
        Assert.Null(CensoredAnova.Of([1, 2], new bool[2], [0, 1]));
        Assert.Null(CensoredAnova.Of([1, 2, 3], [true, true, true], [0, 0, 1]));
    }
}
