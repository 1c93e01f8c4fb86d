using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Shielding;

public sealed class ShieldingIntervalTests
{
    // A mean that equals the floor's, or lies a hair above or below it, says the same of the signal.
    [Theory]
    [InlineData(-0.001)]
    [InlineData(1e-14)]
    [InlineData(1e-6)]
    [InlineData(0.001)]
    [InlineData(0.01)]
    [InlineData(0.03)]
    public void TheBoundHasNoGapWhereTheCoveredMeanMeetsTheFloor(double riseDb) =>
        Assert.Equal(Low(0), Low(riseDb), 0.2);

    // A higher mean never gives a higher bound by more than the two ways of adding differ.
    [Fact]
    public void TheBoundFallsAsTheCoveredMeanRises()
    {
        double last = Low(0);
        for (int step = 1; step <= 100; step++)
        {
            double low = Low(0.01 * step);
            Assert.InRange(low, last - 0.2, last + 0.05);
            last = low;
        }
    }

    private static double Low(double riseDb)
    {
        static RepeatedLevel Level(double db, double error, double freedom) => new(db, new Contribution(error, freedom));
        var interval = new ShieldingInterval(new DetectorNoise(20), Confidence.NinetyFive, new CoveredReadings(5, 5, 0));
        return interval.For(new ReadingLevels(
            Level(-30, 0.1, 4), Level(-100 + riseDb, 0.4, 4), Level(-100, 0.05, 200), SystematicError.None)).LowDb;
    }
}
