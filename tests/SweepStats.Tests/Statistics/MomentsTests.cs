using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class MomentsTests
{
    [Fact]
    public void FiveValuesGiveWhatHandArithmeticGives()
    {
        // 0, 0, 0, 0, 5: mean 1, m₂ = (4·1 + 16)/5 = 4, m₃ = (−4 + 64)/5 = 12, m₄ = (4 + 256)/5 = 52: 12/8 and 52/16 − 3.
        (double skewness, double excess) = Moments.SkewnessAndExcess([0, 0, 0, 0, 5]);
        Assert.Equal(1.5, skewness, 1e-14);
        Assert.Equal(0.25, excess, 1e-14);
    }

    [Fact]
    public void PublishedSeriesAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/moments.csv");
        double[][] rows = Fixtures.Numbers("oracles/moments.csv");
        Assert.NotEmpty(rows);
        for (int i = 0; i < rows.Length; i++)
        {
            (double skewness, double excess) = Moments.SkewnessAndExcess(MannKendallTests.Case(cells[i][0]).Y);
            Agreement.Relative(1e-10, rows[i][1], skewness, i);
            Agreement.Relative(1e-10, rows[i][2], excess, i);
        }
    }

    [Fact]
    public void ShiftScaleAndOrderActAsOnShapes()
    {
        double[] values = MannKendallTests.Case("sulfate").Y;
        (double skewness, double excess) = Moments.SkewnessAndExcess(values);
        foreach ((double[] other, double sign) in new[] { (values.Select(v => v + 900).ToArray(), 1.0),
            (values.Select(v => v * -7).ToArray(), -1.0), (values.Reverse().ToArray(), 1.0) })
        {
            (double s, double e) = Moments.SkewnessAndExcess(other);
            Agreement.Relative(1e-10, sign * skewness, s);
            Agreement.Relative(1e-10, excess, e);
        }
    }

    [Fact]
    public void WhatHasNoAnswerIsRefusedOrNotANumber()
    {
        Assert.Throws<ArgumentException>(() => Moments.SkewnessAndExcess([1]));
        Assert.True(double.IsNaN(Moments.SkewnessAndExcess([2, 2, 2]).Excess));
    }
}
