using SweepStats.Alignment;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Alignment;

/// <summary>How far two frequencies may differ and still be the same.</summary>
public sealed class CommonGridTests
{
    // A millionth of the frequency, but no less than a twentieth of the step to the nearer neighbour, and no more than a quarter.
    [Theory]
    [InlineData(10e6, 1e6, 50_000)]
    [InlineData(1e9, 10_000, 1_000)]
    [InlineData(1e9, 100, 25)]
    public void TheyAreTheSameWithinAMillionthBetweenATwentiethAndAQuarterOfTheStep(double hertz, double step, double reach)
    {
        var grid = new FrequencyGrid([hertz - step, hertz, hertz + step]);
        Assert.Equal(1, CommonGrid.IndexOf(grid, hertz + (0.99 * reach)));
        Assert.Equal(1, CommonGrid.IndexOf(grid, hertz - (0.99 * reach)));
        Assert.Equal(-1, CommonGrid.IndexOf(grid, hertz + (1.01 * reach)));
        Assert.Equal(-1, CommonGrid.IndexOf(grid, hertz - (1.01 * reach)));
    }

    // The point at 10 MHz has a neighbour 1 MHz below and one 2 MHz above, then the other way round.
    [Theory]
    [InlineData(9e6, 12e6)]
    [InlineData(8e6, 11e6)]
    public void TheNarrowerOfTwoStepsCounts(double below, double above)
    {
        var grid = new FrequencyGrid([below, 10e6, above]);
        Assert.Equal(1, CommonGrid.IndexOf(grid, 10.049e6));
        Assert.Equal(-1, CommonGrid.IndexOf(grid, 10.051e6));
    }

    [Fact]
    public void TheEndsHaveTheStepOnTheirOneSide()
    {
        var grid = new FrequencyGrid([10e6, 11e6, 13e6]);
        double[] asked = [9.951e6, 9.949e6, 13.099e6, 13.101e6];
        Assert.Equal([0, -1, 2, -1], asked.Select(hertz => CommonGrid.IndexOf(grid, hertz)));
    }

    [Fact]
    public void ASinglePointReachesAMillionthOfItsFrequency()
    {
        var grid = new FrequencyGrid([1e9]);
        Assert.Equal([0, 0, -1, -1],
            new[] { 1e9 + 990, 1e9 - 990, 1e9 + 1010, 1e9 - 1010 }.Select(hertz => CommonGrid.IndexOf(grid, hertz)));
    }
}
