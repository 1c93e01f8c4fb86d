using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class EvenLineTests
{
    [Fact]
    public void ByHand()
    {
        // 1, 2, 6: mean 3, slope (6 − 1)/2.
        var line = EvenLine.Of([1, 2, 6]);
        Assert.Equal(new EvenLine(3, 2.5, 3), line);
        Assert.Equal([0.5, -1, 0.5], line.Residuals([1, 2, 6]));
        Assert.Equal(new EvenLine(4, 0, 1), EvenLine.Of([4]));
    }

    [Fact]
    public void ItIsTheLineOfLeastSquares()
    {
        var random = new RandomSource(8);
        double[] values = [.. Enumerable.Range(0, 37).Select(i => -80 + (0.2 * i) + random.Normal())];
        RegressionLine line = RegressionLine.Of([.. Enumerable.Range(0, 37).Select(i => (double)i)], values);
        Assert.Equal(line.Slope.Value, EvenLine.Of(values).Slope, 1e-13);
        Assert.All(Enumerable.Range(0, 37), i => Assert.Equal(line.At(i), EvenLine.Of(values).At(i), 1e-11));
    }

    [Fact]
    public void EqualLevelsLeaveExactlyNothing()
    {
        double[] level = [.. Enumerable.Repeat(-87.3, 31)];
        Assert.All(EvenLine.Of(level).Residuals(level), rest => Assert.Equal(0, rest));
    }
}
