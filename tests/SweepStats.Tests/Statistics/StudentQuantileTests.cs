using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class StudentQuantileTests
{
    // R 4.2, qt; to two decimals JCGM 100:2008, table G.2 (12.71, 2.78).
    [Theory]
    [InlineData(0.975, 1, 12.706204736174698)]
    [InlineData(0.975, 4, 2.7764451051977934)]
    [InlineData(0.95, 10, 1.8124611228116756)]
    [InlineData(0.995, 2.5, 7.1637281389488026)]
    [InlineData(0.975, double.PositiveInfinity, 1.959963984540054)]
    public void IsTheQuantileOfReference(double probability, double dof, double expected) =>
        Assert.Equal(1, StudentQuantile.Of(probability).At(dof) / expected, 1e-11);

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.5000001)]
    [InlineData(0.51)]
    [InlineData(0.6)]
    [InlineData(0.9)]
    [InlineData(0.975)]
    [InlineData(0.9999)]
    [InlineData(0.99998)]
    [InlineData(0.9999999)]
    [InlineData(0.02)]
    public void NeverDiffersFromTheExactOne(double probability)
    {
        var quantile = StudentQuantile.Of(probability);
        for (double dof = 0.6; dof < 1e7; dof *= 1.37)
        {
            double exact = StudentT.Quantile(probability, dof);
            Assert.Equal(exact, quantile.At(dof), 1e-11 * Math.Abs(exact));
        }
    }

    [Fact]
    public void DegreesOfFreedomThatAreNonsenseAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentQuantile.Of(0.975).At(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentQuantile.Of(0.975).At(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => StudentQuantile.Of(1));
    }
}
