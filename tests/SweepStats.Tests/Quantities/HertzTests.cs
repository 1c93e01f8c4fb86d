using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Tests.Quantities;

public sealed class HertzTests
{
    [Theory]
    [InlineData(1, 2, -1)]
    [InlineData(2, 2, 0)]
    [InlineData(3, 2, 1)]
    public void FrequenciesStandInTheOrderOfTheirNumbers(double left, double right, int order)
    {
        Hertz a = new(left), b = new(right);
        Assert.Equal(order, a.CompareTo(b));
        Assert.Equal((order < 0, order <= 0, order > 0, order >= 0), (a < b, a <= b, a > b, a >= b));
    }
}
