using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CensoredGroupsTests
{
    // R, survreg of survival (fixtures/oracles/censored.R).
    [Theory]
    [InlineData("some")]
    [InlineData("many")]
    [InlineData("none")]
    public void AgreesWithReference(string set)
    {
        double[] expected = Fixtures.Numbers(
            "oracles/censored-fits.csv")[Array.FindIndex(Fixtures.Cells("oracles/censored-fits.csv"), r => r[0] == set)];
        (double[] values, bool[] censored, int[] groups) = Read(set);
        CensoredGroups full = CensoredGroups.Of(values, censored, groups)!;
        CensoredGroups common = CensoredGroups.Of(values, censored, new int[values.Length])!;
        for (int l = 0; l < 3; l++)
        {
            Assert.Equal(expected[l + 1], full.Means[l], 1e-8);
        }

        Assert.Equal(expected[4], full.Deviation, 1e-8);
        Assert.Equal(expected[5], full.LogLikelihood, 1e-9);
        Assert.Equal(expected[6], common.Means[0], 1e-8);
        Assert.Equal(expected[7], common.Deviation, 1e-8);
        Assert.Equal(expected[8], common.LogLikelihood, 1e-9);
    }

    [Fact]
    public void WithoutBoundsItIsMeansAndPooledScatter()
    {
        CensoredGroups fit = CensoredGroups.Of([1, 3, 10, 14], new bool[4], [0, 0, 1, 1])!;
        Assert.Equal(2, fit.Means[0], 1e-12);
        Assert.Equal(12, fit.Means[1], 1e-12);
        // Squares 2 and 8 over four values.
        Assert.Equal(Math.Sqrt(2.5), fit.Deviation, 1e-12);
        // Four normal values: −2·ln(2π·2.5) − 2.
        Assert.Equal((-2 * Math.Log(2 * Math.PI * 2.5)) - 2, fit.LogLikelihood, 1e-12);
    }

    [Fact]
    public void WithoutBoundsTheClimbEndsWhereTheMeansAre()
    {
        double[] values = [40, 41.5, 43, 39, 44.25, 46];
        int[] groups = [0, 1, 0, 1, 2, 2];
        CensoredGroups fit = CensoredGroups.Of(values, new bool[6], groups)!,
            climbed = new CensoredClimb(values, new bool[6], groups).Summit();
        Assert.Equal(climbed.Means, fit.Means, (a, b) => Math.Abs(a - b) < 1e-10);
        Assert.Equal(climbed.Deviation, fit.Deviation, 1e-10);
        Assert.Equal(climbed.LogLikelihood, fit.LogLikelihood, 1e-10);
    }

    [Fact]
    public void AGroupOfBoundsAloneHasNoMeanAndDoesNotMoveTheOthers()
    {
        CensoredGroups alone = CensoredGroups.Of([1, 3, 10, 14], new bool[4], [0, 0, 1, 1])!;
        CensoredGroups beside =
            CensoredGroups.Of([1, 3, 10, 14, 20, 21], [false, false, false, false, true, true], [0, 0, 1, 1, 2, 2])!;
        Assert.Equal(double.PositiveInfinity, beside.Means[2]);
        Assert.Equal(alone.Means[0], beside.Means[0], 1e-12);
        Assert.Equal(alone.LogLikelihood, beside.LogLikelihood, 1e-12);
    }

    [Fact]
    public void ABoundLiftsTheMeanAboveTheValueItWouldHaveBeen()
    {
        CensoredGroups value = CensoredGroups.Of([40, 41, 42], new bool[3], [0, 0, 0])!;
        CensoredGroups bound = CensoredGroups.Of([40, 41, 42], [false, false, true], [0, 0, 0])!;
        Assert.True(bound.Means[0] > value.Means[0]);
        // A bound far below tells next to nothing.
        CensoredGroups weak = CensoredGroups.Of([40, 41, 42, -300], [false, false, false, true], [0, 0, 0, 0])!;
        Assert.Equal(value.Means[0], weak.Means[0], 1e-9);
    }

    [Fact]
    public void ShiftScaleAndOrderDoAsTheyShould()
    {
        (double[] values, bool[] censored, int[] groups) = Read("some");
        CensoredGroups fit = CensoredGroups.Of(values, censored, groups)!;
        CensoredGroups moved = CensoredGroups.Of([.. values.Select(v => (2 * v) + 500)], censored, groups)!;
        CensoredGroups turned = CensoredGroups.Of([.. values.Reverse()], [.. censored.Reverse()], [.. groups.Reverse()])!;
        Assert.Equal((2 * fit.Means[1]) + 500, moved.Means[1], 1e-7);
        Assert.Equal(2 * fit.Deviation, moved.Deviation, 1e-8);
        Assert.Equal(fit.Means[2], turned.Means[2], 1e-9);
    }

    [Fact]
    public void WhereNothingTellsTheScatterThereIsNoFit()
    {
        Assert.Null(CensoredGroups.Of([1, 2], new bool[2], [0, 1]));
        Assert.Null(CensoredGroups.Of([0.1, 0.1, 0.1, 2], new bool[4], [0, 0, 0, 1]));
        Assert.Null(CensoredGroups.Of([1, 2], [true, true], [0, 0]));
        Assert.Null(CensoredGroups.Of([1, 1, 2], [false, false, true], [0, 0, 0]));
        Assert.Throws<ArgumentException>(() => CensoredGroups.Of([1, double.NaN], new bool[2], [0, 0]));
        Assert.Throws<ArgumentException>(() => CensoredGroups.Of([1, 2], new bool[1], [0, 0]));
    }

    [Fact]
    public void TailsOfTheNormalDistributionKeepTheirDigits()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/censored-tail.csv"))
        {
            Assert.Equal(1, NormalTail.LogCdf(row[0]) / row[1], 2e-13);
            Assert.Equal(1, NormalTail.Ratio(row[0]) / row[2], 2e-13);
        }
    }

    private static (double[] Values, bool[] Censored, int[] Groups) Read(string set)
    {
        double[][] rows = [.. Fixtures.Numbers("oracles/censored-values.csv").Zip(Fixtures.Cells("oracles/censored-values.csv"))
            .Where(r => r.Second[0] == set).Select(r => r.First)];
        return ([.. rows.Select(r => r[1])], [.. rows.Select(r => r[2] == 1)], [.. rows.Select(r => (int)r[3])]);
    }
}
