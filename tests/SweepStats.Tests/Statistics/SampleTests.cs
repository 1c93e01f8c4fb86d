using System.Globalization;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class SampleTests
{
    private static readonly double[] Levels = [-87.43, -86.91, -88.02, -87.15, -87.66, -86.4];

    [Fact]
    public void FourLevelsGiveTheMeanAndDeviationWorkedByHand()
    {
        // 1, 2, 3, 6: mean 3; squared deviations 4 + 1 + 0 + 9 = 14; 14/3.
        double[] values = [1, 2, 3, 6];
        Assert.Equal(3, Sample.Mean(values));
        Assert.Equal(Math.Sqrt(14.0 / 3), Sample.StandardDeviation(values), 1e-15);
    }

    // NIST StRD, univariate summary statistics. Digits that the stored decimals allow: NumAcc3 and NumAcc4 hold their scatter to
    // 9 and 8 digits.
    [Theory]
    [InlineData("PiDigits", 14.5, 14.5, 13)]
    [InlineData("Lottery", 14.5, 14.5, 13)]
    [InlineData("Lew", 14.5, 14.5, 13)]
    [InlineData("Mavro", 14.5, 13, 13)]
    [InlineData("Michelso", 14.5, 13, 13)]
    [InlineData("NumAcc1", 15, 15, 15)]
    [InlineData("NumAcc2", 15, 14.5, 14.5)]
    [InlineData("NumAcc3", 15, 9, 9)]
    [InlineData("NumAcc4", 15, 8, 8)]
    public void TheNistUnivariateSetsComeOutToTheDigitsTheyHold(string set, double meanDigits, double deviationDigits,
    double lagDigits)
    {
        string[] certified = Fixtures.Cells("published/nist-strd-univariate/certified.csv").Single(row => row[0] == set);
        double[] values = UnivariateSet(set);
        Assert.Equal(int.Parse(certified[1], CultureInfo.InvariantCulture), values.Length);
        AtLeastDigits(meanDigits, certified[2], Sample.Mean(values));
        AtLeastDigits(deviationDigits, certified[3], Sample.StandardDeviation(values));
        AtLeastDigits(lagDigits, certified[4], Autocorrelation.Lag1(values));
    }

    [Fact]
    public void ShiftingMovesTheMeanAndLeavesTheDeviation()
    {
        double[] shifted = [.. Levels.Select(v => v + 40)];
        Assert.Equal(Sample.Mean(Levels) + 40, Sample.Mean(shifted), 1e-13);
        Assert.Equal(Sample.StandardDeviation(Levels), Sample.StandardDeviation(shifted), 1e-13);
    }

    [Fact]
    public void ScalingScalesBoth()
    {
        double[] scaled = [.. Levels.Select(v => v * -4)];
        Assert.Equal(-4 * Sample.Mean(Levels), Sample.Mean(scaled), 1e-13);
        Assert.Equal(4 * Sample.StandardDeviation(Levels), Sample.StandardDeviation(scaled), 1e-13);
    }

    [Fact]
    public void OrderDoesNotMatter()
    {
        double[] turned = [.. Levels.Reverse()];
        Assert.Equal(Sample.Mean(Levels), Sample.Mean(turned));
        Assert.Equal(Sample.StandardDeviation(Levels), Sample.StandardDeviation(turned), 1e-15);
        Assert.Equal(Sample.Quantile(Levels, 0.3), Sample.Quantile(turned, 0.3));
    }

    [Fact]
    public void TheMeanSurvivesCancellationThatAPlainSumLoses()
    {
        Assert.Equal(0.5, Sample.Mean([1e17, 1, -1e17, 1]));
    }

    [Fact]
    public void EqualValuesHaveNoDeviation()
    {
        Assert.Equal(0, Sample.StandardDeviation([0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 0.1]));
    }

    [Theory]
    // Place p(n − 1) in 1, 2, 3, 4, 10; the same as R's quantile(c(3, 1, 10, 2, 4), p), type 7.
    [InlineData(0, 1)]
    [InlineData(0.1, 1.4)]
    [InlineData(0.5, 3)]
    [InlineData(0.75, 4)]
    [InlineData(0.9, 7.6)]
    [InlineData(1, 10)]
    public void QuantilesAreInterpolatedBetweenNeighbours(double share, double expected)
    {
        Assert.Equal(expected, Sample.Quantile([3, 1, 10, 2, 4], share), 1e-14);
    }

    [Fact]
    public void TheMedianOfAnEvenSampleLiesBetweenTheMiddleValues()
    {
        Assert.Equal(2.5, Sample.Median([4, 1, 3, 2]));
        Assert.Equal(7, Sample.Median([7]));
        Assert.Equal(double.NegativeInfinity, Sample.Median([double.NegativeInfinity, double.NegativeInfinity, 1]));
    }

    [Fact]
    public void QuantilesRiseWithTheirShare()
    {
        double last = double.NegativeInfinity;
        for (double share = 0; share <= 1; share += 1.0 / 64)
        {
            double quantile = Sample.Quantile(Levels, share);
            Assert.True(quantile >= last);
            last = quantile;
        }
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => Sample.Mean([]));
        Assert.Throws<ArgumentException>(() => Sample.StandardDeviation([1]));
        Assert.Throws<ArgumentException>(() => Sample.Median([1, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sample.Quantile([1, 2], 1.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sample.Quantile([1, 2], double.NaN));
    }

    private static void AtLeastDigits(double digits, string certified, double actual)
    {
        double expected = double.Parse(certified, CultureInfo.InvariantCulture);
        double reached = Agreement.Digits(expected, actual);
        Assert.True(reached >= digits, $"{reached:F1} digits of {certified}, {digits} needed: {actual:R}");
    }

    private static double[] UnivariateSet(string set) => set switch
    {
        "NumAcc1" => [10000001, 10000003, 10000002],
        "NumAcc2" => Alternating("1"),
        "NumAcc3" => Alternating("1000000"),
        "NumAcc4" => Alternating("10000000"),
        _ => [.. Fixtures.Numbers($"published/nist-strd-univariate/{set}.csv").Select(row => row[0])],
    };

    // Read as decimals, as a file would be: adding 0.1 in binary would be another set.
    private static double[] Alternating(string whole)
    {
        double Decimal(char tenths) => double.Parse($"{whole}.{tenths}", CultureInfo.InvariantCulture);
        return [Decimal('2'), .. Enumerable.Range(0, 500).SelectMany(_ => new[] { Decimal('1'), Decimal('3') })];
    }
}
