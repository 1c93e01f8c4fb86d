using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class RegressionLineTests
{
    [Fact]
    public void FourPairsGiveWhatHandArithmeticGives()
    {
        // x 0 to 3, y 1, 2, 2, 5: slope 6/5, intercept 0.7, residuals 0.3, 0.1, −1.1, 0.7: squares 1.8 on 2 degrees of freedom,
        // u(b)² = 0.9/5.
        RegressionLine line = RegressionLine.Of([0, 1, 2, 3], [1, 2, 2, 5]);
        Assert.Equal(1.2, line.Slope.Value, 1e-15);
        Assert.Equal(0.7, line.Intercept, 1e-15);
        Assert.Equal(Math.Sqrt(0.9), line.ResidualDeviation, 1e-15);
        Assert.Equal(Math.Sqrt(0.18), line.Slope.Uncertainty, 1e-15);
        Assert.Equal(Math.Sqrt(0.9 * (0.25 + (2.25 / 5))), line.InterceptUncertainty, 1e-15);
        // t of 2 degrees of freedom at 0.975 in closed form: 0.95/√(2·0.975·0.025).
        double half = 0.95 / Math.Sqrt(2 * 0.975 * 0.025) * Math.Sqrt(0.18);
        Assert.Equal(1.2 - half, line.Slope.Interval(Confidence.NinetyFive).Low, 1e-12);
        Assert.Equal(1.2 + half, line.Slope.Interval(Confidence.NinetyFive).High, 1e-12);
    }

    [Fact]
    public void TheNorrisSetComesOutToTwelveDigits()
    {
        // NIST StRD, linear regression, set Norris.
        double[] certified = Fixtures.Numbers("published/nist-strd-linear/certified.csv")[0];
        (double[] x, double[] y) = MannKendallTests.Case("norris");
        RegressionLine line = RegressionLine.Of(x, y);
        AtLeastDigits(12.4, certified[1], line.Intercept);
        AtLeastDigits(13, certified[2], line.InterceptUncertainty);
        AtLeastDigits(14, certified[3], line.Slope.Value);
        AtLeastDigits(13, certified[4], line.Slope.Uncertainty);
        AtLeastDigits(13, certified[5], line.ResidualDeviation);
        AtLeastDigits(14, certified[6], Math.Pow(Correlation.Pearson(x, y), 2));
        AtLeastDigits(13, certified[7], line.ResidualDeviation * line.ResidualDeviation * line.Slope.DegreesOfFreedom);
        AtLeastDigits(13, certified[8], Math.Pow(line.Slope.Value / line.Slope.Uncertainty, 2));
    }

    [Fact]
    public void PublishedSeriesAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/trend-line.csv");
        double[][] rows = Fixtures.Numbers("oracles/trend-line.csv");
        for (int i = 0; i < rows.Length; i++)
        {
            double[] row = rows[i];
            (double[] x, double[] y) = MannKendallTests.Case(cells[i][0]);
            RegressionLine line = RegressionLine.Of(x, y);
            Interval interval = line.Slope.Interval(new Confidence(row[1]));
            double[][] pairs =
            [
                [row[2], line.Intercept], [row[3], line.InterceptUncertainty], [row[4], line.Slope.Value],
                [row[5], line.Slope.Uncertainty], [row[6], line.ResidualDeviation], [row[7], line.Slope.DegreesOfFreedom],
                [row[9], interval.Low], [row[10], interval.High],
            ];
            Assert.All(pairs, pair => Agreement.Relative(1e-10, pair[0], pair[1], row));
            // The probability of Norris is 5e-90, where the digits of t are lost seventeenfold.
            Agreement.Relative(1e-9, row[8], line.Slope.Probability, row);
        }
    }

    [Fact]
    public void ShiftScaleAndOrderActAsOnASlope()
    {
        (double[] x, double[] y) = MannKendallTests.Case("sulfate");
        RegressionLine plain = RegressionLine.Of(x, y);
        Near(plain, RegressionLine.Of([.. x.Reverse()], [.. y.Reverse()]), 1);
        Near(plain, RegressionLine.Of([.. x.Select(v => v + 500)], [.. y.Select(v => v - 90)]), 1);
        Near(plain, RegressionLine.Of(x, [.. y.Select(v => v * -3)]), -3);
        Near(plain, RegressionLine.Of([.. x.Select(v => v * 2)], y), 0.5);
        RegressionLine steeper = RegressionLine.Of(x, [.. y.Zip(x, (v, at) => v + (5 * at))]);
        Agreement.Relative(1e-11, plain.Slope.Value + 5, steeper.Slope.Value);
        Agreement.Relative(1e-11, plain.Slope.Uncertainty, steeper.Slope.Uncertainty);
    }

    [Fact]
    public void AStraightLineHasNoScatterAndALevelOneNoAnswer()
    {
        RegressionLine line = RegressionLine.Of([0, 1, 2, 3], [1, 3, 5, 7]);
        Assert.Equal(2, line.Slope.Value);
        Assert.Equal(new Interval(2, 2), line.Slope.Interval(Confidence.NinetyFive));
        Assert.Equal(0, line.Slope.Probability);
        Assert.True(double.IsNaN(RegressionLine.Of([0, 1, 2], [4, 4, 4]).Slope.Probability));
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => RegressionLine.Of([1, 2], [1, 2]));
        Assert.Throws<ArgumentException>(() => RegressionLine.Of([1, 2, 3], [1, 2]));
        Assert.Throws<ArgumentException>(() => RegressionLine.Of([2, 2, 2], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => RegressionLine.Of([1, 2, 3], [1, 2, double.NaN]));
        Assert.Throws<ArgumentOutOfRangeException>(() => RegressionLine.Of([1, 2, 3], [1, 2, 4]).Slope.Interval(default));
    }

    private static void AtLeastDigits(double digits, double certified, double actual) =>
        Assert.True(Agreement.Digits(certified, actual) >= digits,
            $"{Agreement.Digits(certified, actual):F1} digits of {certified:R}, {digits} needed: {actual:R}");

    private static void Near(RegressionLine plain, RegressionLine other, double factor)
    {
        Agreement.Relative(1e-10, plain.Slope.Value * factor, other.Slope.Value);
        Agreement.Relative(1e-10, plain.Slope.Uncertainty * Math.Abs(factor), other.Slope.Uncertainty);
        Agreement.Relative(1e-9, plain.Slope.Probability, other.Slope.Probability);
    }
}
