using System.Globalization;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class OneWayAnovaTests
{
    private static readonly double[] Values = [1, 2, 3, 5, 6, 7, 8];
    private static readonly int[] Groups = [0, 0, 0, 1, 1, 1, 1];

    [Fact]
    public void TwoGroupsGiveWhatHandArithmeticGives()
    {
        // Means 2 and 6.5, grand mean 32/7. Between 3·(18/7)² + 4·(27/14)² = 243/7; within 2 + 5 = 7 on 5 degrees of freedom.
        OneWayAnova table = OneWayAnova.Of(Values, Groups);
        Assert.Equal(1, table.BetweenDegreesOfFreedom);
        Assert.Equal(5, table.WithinDegreesOfFreedom);
        Assert.Equal(243.0 / 7, table.BetweenSumOfSquares, 1e-13);
        Assert.Equal(7, table.WithinSumOfSquares, 1e-13);
        Assert.Equal(243.0 / 7 / 1.4, table.F, 1e-12);
        Assert.Equal((7 - (25.0 / 7)), table.EffectiveGroupSize, 1e-14);
        Assert.Equal(((243.0 / 7) - 1.4) / (24.0 / 7), table.GroupVariance, 1e-12);
        // With two groups F is t² of the pooled test: p is twice the upper tail of t with 5 degrees of freedom.
        Assert.Equal(Math.Sqrt(table.F), StudentT.Quantile(1 - (table.Probability / 2), 5), 1e-9);
    }

    // NIST StRD, one-way analysis of variance; digits of F that the stored decimals allow.
    [Theory]
    [InlineData("SiRstv", 12.5)]
    [InlineData("AtmWtAg", 10)]
    [InlineData("SmLs01", 13.5)]
    [InlineData("SmLs02", 13.5)]
    [InlineData("SmLs03", 13)]
    [InlineData("SmLs04", 9.5)]
    [InlineData("SmLs05", 9.5)]
    [InlineData("SmLs06", 9.5)]
    [InlineData("SmLs07", 3.5)]
    [InlineData("SmLs08", 3.5)]
    [InlineData("SmLs09", 3.5)]
    public void TheNistSetsComeOutToTheDigitsTheyHold(string set, double digits)
    {
        double[] certified = Fixtures.Numbers("published/nist-strd-anova/certified.csv")[
            Array.FindIndex(Fixtures.Cells("published/nist-strd-anova/certified.csv"), row => row[0] == set)];
        (double[] values, int[] groups) = set.StartsWith("SmLs", StringComparison.Ordinal) ? Regular(set[5] - '1')
            : FromFile(set);
        OneWayAnova table = OneWayAnova.Of(values, groups);
        Assert.Equal(certified[1], table.BetweenDegreesOfFreedom);
        Assert.Equal(certified[2], table.WithinDegreesOfFreedom);
        AtLeastDigits(digits, certified[5], table.F);
        AtLeastDigits(digits - 0.5, certified[3], table.BetweenSumOfSquares);
        AtLeastDigits(digits - 0.5, certified[4], table.WithinSumOfSquares);
        AtLeastDigits(digits, certified[7], Math.Sqrt(table.WithinMeanSquare));
        AtLeastDigits(digits - 0.5, certified[6],
            table.BetweenSumOfSquares / (table.BetweenSumOfSquares + table.WithinSumOfSquares));
    }

    [Fact]
    public void FDoesNotChangeWithShiftScaleOrOrder()
    {
        double f = OneWayAnova.Of(Values, Groups).F;
        Assert.Equal(f, OneWayAnova.Of([.. Values.Select(v => v - 90)], Groups).F, 1e-11);
        Assert.Equal(f, OneWayAnova.Of([.. Values.Select(v => v * -3)], Groups).F, 1e-11);
        Assert.Equal(f, OneWayAnova.Of([.. Values.Reverse()], [.. Groups.Reverse()]).F, 1e-11);
        Assert.Equal(f, OneWayAnova.Of(Values, [.. Groups.Select(g => 1 - g)]).F, 1e-11);
    }

    [Fact]
    public void PullingGroupsApartRaisesFAndLowersItsProbability()
    {
        OneWayAnova last = OneWayAnova.Of(Values, Groups);
        foreach (double apart in (double[])[1, 2, 4])
        {
            OneWayAnova next = OneWayAnova.Of([.. Values.Zip(Groups, (v, g) => v + (g * apart))], Groups);
            Assert.True(next.F > last.F && next.Probability < last.Probability);
            last = next;
        }
    }

    [Fact]
    public void GroupsThatAreAlikeHaveNoVarianceBetween()
    {
        OneWayAnova table = OneWayAnova.Of([1, 3, 1, 3], [0, 0, 1, 1]);
        Assert.Equal(0, table.F);
        Assert.Equal(0, table.GroupVariance);
        Assert.Equal(1, table.Probability, 1e-14);
        Assert.True(double.IsNaN(OneWayAnova.Of([2, 2, 2, 2], [0, 0, 1, 1]).Probability));
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => OneWayAnova.Of([1, 2], [0]));
        Assert.Throws<ArgumentException>(() => OneWayAnova.Of([1, 2, 3], [0, 0, 0]));
        Assert.Throws<ArgumentException>(() => OneWayAnova.Of([1, 2], [0, 1]));
        Assert.Throws<ArgumentException>(() => OneWayAnova.Of([1, 2, 3], [0, 2, 2]));
        Assert.Throws<ArgumentException>(() => OneWayAnova.Of([1, 2, 3], [0, -1, 0]));
        Assert.Throws<ArgumentException>(() => OneWayAnova.Of([], []));
    }

    private static void AtLeastDigits(double digits, double certified, double actual) =>
        Assert.True(Agreement.Digits(certified, actual) >= digits,
            $"{Agreement.Digits(certified, actual):F1} digits of {certified:R}, {digits} needed: {actual:R}");

    private static (double[] Values, int[] Groups) FromFile(string set)
    {
        double[][] rows = Fixtures.Numbers($"published/nist-strd-anova/{set}.csv");
        return ([.. rows.Select(row => row[1])], [.. rows.Select(row => (int)row[0] - 1)]);
    }

    // The rule of SmLs01 to SmLs09, see origin.md.
    private static (double[] Values, int[] Groups) Regular(int number)
    {
        int size = new[] { 21, 201, 2001 }[number % 3];
        string whole = new[] { "1", "1000000", "1000000000000" }[number / 3];
        int[] first = [4, 3, 5, 3, 5, 3, 5, 3, 5];
        var values = new List<double>();
        var groups = new List<int>();
        for (int group = 0; group < first.Length; group++)
        {
            for (int i = 0; i < size; i++)
            {
                int tenths = i == 0 ? first[group] : first[group] + (i % 2 == 1 ? -1 : 1);
                values.Add(double.Parse($"{whole}.{tenths}", CultureInfo.InvariantCulture));
                groups.Add(group);
            }
        }

        return ([.. values], [.. groups]);
    }
}
