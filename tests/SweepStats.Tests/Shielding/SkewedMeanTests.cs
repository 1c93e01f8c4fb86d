using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Shielding;

/// <summary>Limits of a mean of skewed readings against Student's.</summary>
public sealed class SkewedMeanTests
{
    [Theory]
    [InlineData(0.95, 3, 6)]
    [InlineData(0.90, 4, 5)]
    public void TheReachFollowsTheQuantilesOfDrawnMeans(double level, int lower, int upper)
    {
        // Quantiles of Student's ratio: R 4.2.2, fixtures/oracles/skewness.R. Above the mean the reach is never shorter than the
        // draws ask for, but for 1 % of theirs.
        foreach (double[] row in Fixtures.Numbers("oracles/skewness-quantiles.csv"))
        {
            int sweeps = (int)row[2];
            var confidence = new Confidence(level);
            (double below, double above) = Reach(new DetectorNoise(row[0]), confidence, (sweeps, 0), (row[1], 0));
            double t = StudentT.Quantile(confidence.TwoSidedQuantile, sweeps - 1);
            Agreement.Relative(0.12, row[upper], below * t, row);
            Assert.InRange(above * t, -0.99 * row[lower], -1.15 * row[lower]);
        }
    }

    [Fact]
    public void SymmetricScatterLeavesLessToMend()
    {
        var noise = new DetectorNoise(1);
        (double below, double above) = Reach(noise, Confidence.NinetyFive, (5, 0), (5, 0));
        (double scatteredBelow, double scatteredAbove) = Reach(noise, Confidence.NinetyFive, (5, 3), (5, 0));
        (double seenBelow, _) = Reach(noise, Confidence.NinetyFive, (5, 0), (5, 10));
        Assert.True(1 < scatteredBelow && scatteredBelow < below);
        Assert.True(above < scatteredAbove && scatteredAbove < 1);
        Assert.InRange(seenBelow, 1, scatteredBelow);
    }

    [Fact]
    public void ReadingsWithoutNoiseKeepStudentsLimits() =>
        Assert.Equal((1, 1), Reach(new DetectorNoise(double.PositiveInfinity), Confidence.NinetyFive, (5, 1), (0, 1)));

    private static (double Below, double Above) Reach(
        DetectorNoise noise, Confidence confidence, (int Sweeps, double Scatter) covered,
        (double SnrDb, double StandardError) at) =>
        new SkewedMean(confidence).Reach(SkewedMean.Skewness(
            noise, new CoveredReadings(covered.Sweeps, covered.Sweeps, covered.Scatter), at.SnrDb, at.StandardError));
}
