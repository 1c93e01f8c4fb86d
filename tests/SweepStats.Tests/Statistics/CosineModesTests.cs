using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CosineModesTests
{
    // √(2/3)·cos(πk(i + ½)/3): (1, 0, −1)/√2 and (1, −2, 1)/√6.
    [Fact]
    public void ThreeValuesHaveTwoModes()
    {
        double[][] weights = CosineModes.Weights(3);
        double two = Math.Sqrt(0.5), six = Math.Sqrt(1.0 / 6);
        Assert.Equal(2, weights.Length);
        Assert.Equal([two, 0, -two], weights[0], (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([six, -2 * six, six], weights[1], (a, b) => Math.Abs(a - b) < 1e-12);
    }

    // Products of values x and y at three places are x·xᵀ + y·yᵀ; modes of x = (1, 0, 0) and y = (0, 0, 2) are (1/√2, 1/√6) and
    // (−2/√2, 2/√6).
    [Fact]
    public void ProductsOfModesAreThoseOfTheirValues()
    {
        double[,] modes = CosineModes.Products(new double[,] { { 1, 0, 0 }, { 0, 0, 0 }, { 0, 0, 4 } });
        Assert.Equal(2.5, modes[0, 0], 1e-12);
        Assert.Equal((1 - 4) / Math.Sqrt(12), modes[0, 1], 1e-12);
        Assert.Equal(modes[0, 1], modes[1, 0]);
        Assert.Equal(5.0 / 6, modes[1, 1], 1e-12);
    }
}
