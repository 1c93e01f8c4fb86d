using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class ExponentialTests
{
    [Theory]
    // x + x²/2 + x³/6 + … to sixteen digits.
    [InlineData(1e-17, 1e-17)]
    [InlineData(1e-8, 1.0000000050000000167e-8)]
    [InlineData(-1e-5, -9.9999500001666662500e-6)]
    [InlineData(0.1, 0.10517091807564762481)]
    [InlineData(1, 1.7182818284590452354)]
    [InlineData(-50, -1)]
    public void NoDigitIsLost(double x, double expected)
    {
        Agreement.Relative(4e-16, expected, Exponential.MinusOne(x), x);
    }

    [Fact]
    public void TheEndsAreInfinityAndMinusOne()
    {
        Assert.Equal(double.PositiveInfinity, Exponential.MinusOne(1000));
        Assert.Equal(-1, Exponential.MinusOne(-1000));
        Assert.Equal(0, Exponential.MinusOne(0));
    }
}
