using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Floor;

public sealed class PeakHoldTests
{
    private const string Table = "published/noise-statistics/peaks.csv";

    [Fact]
    public void TheHighestOfManyLooksOverReadsAsTheTableSays()
    {
        foreach (double[] row in Fixtures.Numbers(Table))
        {
            Agreement.Within(0.00000051, row[1], PeakHold.BiasDb((int)row[0]), row);
        }
    }

    [Fact]
    public void HandWorkedBiasesComeOut()
    {
        Assert.Equal(0, PeakHold.BiasDb(1), 13);
        Assert.Equal(10 * Math.Log10(1.5), PeakHold.BiasDb(2), 13);
        Assert.Equal(10 * Math.Log10(25.0 / 12), PeakHold.BiasDb(4), 13);
        Assert.Throws<ArgumentOutOfRangeException>(() => PeakHold.BiasDb(0));
    }

    [Fact]
    public void TheMedianOfTheHighestIsTheGammaQuantileOfTheTable()
    {
        // All N looks lie below the median with one half: each with 2^(−1/N).
        foreach (double[] row in Fixtures.Numbers(Table))
        {
            Agreement.Within(0.000051, row[4], 10 * Math.Log10(GammaDistribution.Quantile(1, Math.Pow(0.5, 1 / row[0]))), row);
        }
    }

    [Fact]
    public void TheLowestOfManyLooksIsALookAtSmallerNoise()
    {
        foreach (double[] row in Fixtures.Numbers(Table))
        {
            Agreement.Within(0.000051, row[5], new DetectorNoise(1).LogMeanOffset - (10 * Math.Log10(row[0])), row);
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(20)]
    [InlineData(100)]
    public void DrawnPeaksLieWhereTheTableSays(int looks)
    {
        const int Draws = 10_000;
        double[] row = Fixtures.Numbers(Table).Single(r => r[0] == looks);
        var detector = new Detector(Averaging.Sample, 1);
        var random = new RandomSource(1977);
        double[] peaks =
            [.. Enumerable.Range(0, Draws).Select(_ => Enumerable.Range(0, looks).Max(_ => detector.Reading(0, random)))];
        // Four and a half standard errors; the power of a peak scatters by √Σ1/k², at most π/√6.
        Agreement.Within(4.5 * row[3] / Math.Sqrt(Draws), row[2], Sample.Mean(peaks), row);
        Agreement.Within(4.5 * Math.PI / Math.Sqrt(6.0 * Draws), Math.Pow(10, PeakHold.BiasDb(looks) / 10),
            Sample.Mean([.. peaks.Select(p => Math.Pow(10, p / 10))]), row);
    }
}
