using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class ConfidenceTests
{
    [Fact]
    public void HalfOfWhatIsLeftLiesOnEachSide()
    {
        Assert.Equal(0.975, Confidence.NinetyFive.TwoSidedQuantile, 1e-15);
        Assert.Equal(0.9, new Confidence(0.8).TwoSidedQuantile, 1e-15);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(95)]
    [InlineData(double.NaN)]
    public void ALevelOutsideZeroToOneIsRefused(double level)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Confidence(level));
    }

    [Fact]
    public void AnIntervalHoldsItsEnds()
    {
        var interval = new Interval(-1, double.PositiveInfinity);
        Assert.True(interval.Contains(-1));
        Assert.True(interval.Contains(double.PositiveInfinity));
        Assert.False(interval.Contains(-1.0000001));
        Assert.False(interval.Contains(double.NaN));
        Assert.Equal(double.PositiveInfinity, interval.Width);
    }
}
