using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CompensatedSumTests
{
    [Fact]
    public void WhatLargeValuesSwallowIsKept()
    {
        // Neumaier's own example, from memory: 1 + 1e100 + 1 − 1e100 = 2.
        Assert.Equal(2, Sum([1, 1e100, 1, -1e100]));
        Assert.Equal(1, Sum([.. Enumerable.Repeat(0.1, 10)]));
    }

    // The remainder of an addition is a double, so asking which is larger and not asking must give the same one.
    [Fact]
    public void TheBitsAreThoseOfTheBranchingForm()
    {
        var random = new RandomSource(5);
        double[] values =
            [.. Enumerable.Range(0, 5000).Select(_ => random.Normal() * Math.Pow(10, (20 * random.Uniform()) - 10))];
        double sum = 0, lost = 0;
        foreach (double value in values)
        {
            double next = sum + value;
            lost += Math.Abs(sum) >= Math.Abs(value) ? sum - next + value : value - next + sum;
            sum = next;
        }

        Assert.Equal(sum + lost, Sum(values));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void ValuesThatAreNotFiniteMakeItNotANumber(double value) => Assert.True(double.IsNaN(Sum([1, value, 2])));

    // Tenths as decimals add up exactly; of doubles, large ones among them, as many digits are left as the values have.
    [Theory]
    [InlineData(63)]
    [InlineData(64)]
    [InlineData(1601)]
    public void ManyAtOnceAddUpAsOneAfterTheOtherDoes(int count)
    {
        double[] values = [.. Enumerable.Range(0, count).Select(i => (i % 3 == 0 ? 1e9 : i % 3 == 1 ? -1e9 : 0) + (i / 10.0))];
        double exact = (double)Enumerable.Range(0, count)
            .Sum(i => (i % 3 == 0 ? 1_000_000_000m : i % 3 == 1 ? -1_000_000_000m : 0) + (i / 10m));
        Agreement.Relative(1e-9, exact, CompensatedSum.Of(values));
        Agreement.Relative(1e-15, Sum(values), CompensatedSum.Of(values));
    }

    [Fact]
    public void OneOfManyThatIsNotFiniteMakesItNotANumber() => Assert.All(
        Enumerable.Range(0, 100),
        at => Assert.True(
            double.IsNaN(CompensatedSum.Of([.. Enumerable.Range(0, 100).Select(i => i == at ? double.NegativeInfinity : i)]))));

    private static double Sum(double[] values)
    {
        var sum = new CompensatedSum();
        foreach (double value in values)
        {
            sum.Add(value);
        }

        return sum.Value;
    }
}
