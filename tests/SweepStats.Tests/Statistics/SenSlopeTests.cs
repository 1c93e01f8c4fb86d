using MathNet.Numerics.Distributions;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class SenSlopeTests
{
    [Fact]
    public void FiveValuesGiveWhatHandArithmeticGives()
    {
        // 0, 1, 3, 2, 9 at 0 to 4: slopes sorted −1, ½, ⅔, 1, 3/2, 2, 9/4, 8/3, 3, 7. P(S ≥ 8) = 0.0417 and P(S ≥ 10) = 0.0083:
        // at 95 % S = 8 stays inside, places 1 and 10; at 90 % S = 6 does, places 2 and 9.
        double[] x = [0, 1, 2, 3, 4];
        double[] y = [0, 1, 3, 2, 9];
        SenSlope wide = SenSlope.Of(x, y, Confidence.NinetyFive);
        Assert.Equal(1.75, wide.Slope, 1e-15);
        Assert.Equal(new Interval(-1, 7), wide.Interval);
        Assert.Equal(new Interval(0.5, 3), SenSlope.Of(x, y, new Confidence(0.9)).Interval);
    }

    [Fact]
    public void TheSulfateOfTheEpaComesOut()
    {
        // US EPA, Unified Guidance 2009, example 17-6.
        (double[] x, double[] y) = MannKendallTests.Case("sulfate");
        SenSlope line = SenSlope.Of(x, y, Confidence.NinetyFive);
        Assert.Equal(26.6666667, line.Slope, 5e-8);
        Assert.Equal(20.0, line.Interval.Low, 0.05);
        Assert.Equal(35.71182, line.Interval.High, 5e-6);
    }

    [Fact]
    public void TheSodiumOfTheEpaComesOutAndItsIntervalIsExact()
    {
        // US EPA, Unified Guidance 2009, example 17-7. 0.399 to 2.333 belongs to the normal approximation; exact are places 12
        // and 34 of 45.
        (double[] x, double[] y) = MannKendallTests.Case("sodium");
        double[] slopes = [.. Slopes(x, y).Order()];
        SenSlope line = SenSlope.Of(x, y, Confidence.NinetyFive);
        Assert.Equal(1.3333, line.Slope, 5e-5);
        Assert.Equal(new Interval(slopes[11], slopes[33]), line.Interval);
        Interval normal = SenSlope.Limits(slopes, Normal.InvCDF(0, 1, 0.975) * Math.Sqrt(125));
        Assert.Equal(0.399, normal.Low, 5e-4);
        Assert.Equal(2.333, normal.High, 5e-4);
    }

    [Fact]
    public void PublishedSeriesAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/trend-sen.csv");
        double[][] rows = Fixtures.Numbers("oracles/trend-sen.csv");
        for (int i = 0; i < rows.Length; i++)
        {
            (double[] x, double[] y) = MannKendallTests.Case(cells[i][0]);
            SenSlope line = SenSlope.Of(x, y, new Confidence(rows[i][1]));
            Agreement.Relative(1e-12, rows[i][3], line.Slope, rows[i]);
            Agreement.Relative(1e-11, rows[i][4], line.Interval.Low, rows[i]);
            Agreement.Relative(1e-11, rows[i][5], line.Interval.High, rows[i]);
            Interval normal = SenSlope.Limits([.. Slopes(x, y).Order()], rows[i][6]);
            Agreement.Relative(1e-11, rows[i][7], normal.Low, rows[i]);
            Agreement.Relative(1e-11, rows[i][8], normal.High, rows[i]);
        }
    }

    [Fact]
    public void ShiftScaleAndOrderActAsOnASlope()
    {
        (double[] x, double[] y) = MannKendallTests.Case("sodium");
        SenSlope plain = SenSlope.Of(x, y, Confidence.NinetyFive);
        Near(plain, SenSlope.Of([.. x.Reverse()], [.. y.Reverse()], Confidence.NinetyFive), 1);
        Near(plain, SenSlope.Of([.. x.Select(v => v - 90)], [.. y.Select(v => v + 7)], Confidence.NinetyFive), 1);
        Near(plain, SenSlope.Of(x, [.. y.Select(v => v * 3)], Confidence.NinetyFive), 3);
        Near(plain, SenSlope.Of([.. x.Select(v => v * 2)], y, Confidence.NinetyFive), 0.5);
        SenSlope turned = SenSlope.Of(x, [.. y.Select(v => -v)], Confidence.NinetyFive);
        Assert.Equal(-plain.Interval.High, turned.Interval.Low, 1e-12);
        // A slope added to the values is added to the result.
        SenSlope steeper = SenSlope.Of(x, [.. y.Zip(x, (v, at) => v + (5 * at))], Confidence.NinetyFive);
        Assert.Equal(plain.Slope + 5, steeper.Slope, 1e-10);
        Assert.Equal(plain.Interval.Low + 5, steeper.Interval.Low, 1e-10);
    }

    [Fact]
    public void OneWildValueDoesNotPullTheSlope()
    {
        double[] x = [.. Enumerable.Range(0, 12).Select(i => (double)i)];
        double[] y = [.. x.Select(v => (2 * v) + (0.01 * (v % 3)))];
        y[11] = 1e6;
        SenSlope line = SenSlope.Of(x, y, Confidence.NinetyFive);
        Assert.InRange(line.Slope, 1.99, 2.02);
        Assert.InRange(line.Interval.High, line.Slope, 3);
    }

    [Fact]
    public void TooFewValuesGiveNoLimit()
    {
        SenSlope line = SenSlope.Of([0, 1, 2, 3], [1, 2, 3, 5], Confidence.NinetyFive);
        Assert.Equal(new Interval(double.NegativeInfinity, double.PositiveInfinity), line.Interval);
        SenSlope tied = SenSlope.Of([0, 1, 2, 3], [1, 2, 2, 5], new Confidence(0.99));
        Assert.Equal(double.PositiveInfinity, tied.Interval.Width);
        // Values without any scatter are all ties: a level line, known without spread.
        Assert.Equal(new SenSlope(0, new Interval(0, 0)), SenSlope.Of([0, 1, 2, 3], [4, 4, 4, 4], Confidence.NinetyFive));
    }

    [Fact]
    public void TheIntervalHoldsTheTruthAsOftenAsTheTableSays()
    {
        // Eight values: the interval at 95 % misses with 2·P(S ≥ 18) = 3.115 %, for scatter of any shape; here a square of a
        // normal one.
        const int draws = 10_000;
        const double truth = 2 * 0.015575;
        var random = new RandomSource(1968);
        double[] x = [.. Enumerable.Range(0, 8).Select(i => (double)i)];
        int missed = 0;
        for (int draw = 0; draw < draws; draw++)
        {
            double[] y = [.. x.Select(v => (3 * v) + Math.Pow(random.Normal(), 2))];
            missed += SenSlope.Of(x, y, Confidence.NinetyFive).Interval.Contains(3) ? 0 : 1;
        }

        Agreement.Within(4 * Math.Sqrt(truth * (1 - truth) / draws), truth, (double)missed / draws);
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => SenSlope.Of([1, 2], [1, 2], Confidence.NinetyFive));
        Assert.Throws<ArgumentException>(() => SenSlope.Of([1, 2, 3], [1, 2], Confidence.NinetyFive));
        Assert.Throws<ArgumentException>(() => SenSlope.Of([1, 2, 1], [1, 2, 3], Confidence.NinetyFive));
        Assert.Throws<ArgumentException>(() => SenSlope.Of([1, 2, 3], [1, 2, double.NaN], Confidence.NinetyFive));
        Assert.Throws<ArgumentException>(() => SenSlope.Of([1, 2, double.NaN], [1, 2, 3], Confidence.NinetyFive));
        Assert.Throws<ArgumentOutOfRangeException>(() => SenSlope.Of([1, 2, 3], [1, 2, 4], default));
    }

    private static void Near(SenSlope plain, SenSlope other, double factor)
    {
        Assert.Equal(plain.Slope * factor, other.Slope, 1e-12);
        Assert.Equal(plain.Interval.Low * factor, other.Interval.Low, 1e-12);
        Assert.Equal(plain.Interval.High * factor, other.Interval.High, 1e-12);
    }

    private static IEnumerable<double> Slopes(double[] x, double[] y) =>
        from j in Enumerable.Range(0, x.Length)
        from i in Enumerable.Range(0, j)
        select (y[j] - y[i]) / (x[j] - x[i]);
}
