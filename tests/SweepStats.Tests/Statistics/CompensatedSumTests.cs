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
