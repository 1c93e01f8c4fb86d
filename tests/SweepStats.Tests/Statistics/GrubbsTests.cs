using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class GrubbsTests
{
    private static readonly double[] Levels = [-87.4, -86.9, -88, -87.1, -87.7, -83.4];

    [Fact]
    public void FourValuesGiveWhatHandArithmeticGives()
    {
        // 1, 2, 3, 10: mean 4, squares 50, G = 6/√(50/3); without the 10 squares 2, ratio 0.04, p = 2·4·½·(1 − √0.96) with 2
        // degrees of freedom.
        Grubbs test = Grubbs.Of([1, 2, 3, 10]);
        Assert.Equal(3, test.Index);
        Agreement.Relative(1e-15, 6 / Math.Sqrt(50.0 / 3), test.Statistic);
        Agreement.Relative(1e-13, 4 * (1 - Math.Sqrt(0.96)), test.Probability);
        Agreement.Relative(1e-13, 2 * (1 - Math.Sqrt(0.96)), Grubbs.Of([1, 2, 3, 10], OutlierSide.High).Probability);
    }

    [Fact]
    public void TheMassSpectrometerOfTheNistHandbookComesOut()
    {
        // NIST/SEMATECH e-Handbook, 1.3.5.17.1.
        double[] mass = [.. Fixtures.Numbers("published/nist-grubbs/mass.csv").Select(row => row[0])];
        Assert.Equal(2.468765, Grubbs.Of(mass).Statistic, 5e-7);
        Assert.Equal(2.031652, Grubbs.CriticalValue(8, 0.05, OutlierSide.High), 5e-7);
        Assert.Equal(2.126645, Grubbs.CriticalValue(8, 0.05), 5e-7);
    }

    [Fact]
    public void PublishedSamplesAgreeWithR()
    {
        foreach (string[] cells in Fixtures.Cells("oracles/outliers-grubbs.csv"))
        {
            double[] row =
                [.. cells.Skip(2).Select(cell => double.Parse(cell, System.Globalization.CultureInfo.InvariantCulture))];
            double[] values = GeneralisedEsdTests.Case(cells[0]);
            OutlierSide side = Enum.Parse<OutlierSide>(cells[1]);
            Grubbs test = Grubbs.Of(values, side);
            Assert.Equal(row[1], test.Index);
            // Michelson's speeds are kept to a deviation of 1e-4 of themselves; what digits are lost are R's and the decimals'.
            Agreement.Relative(cells[0] == "speed" ? 1e-11 : 1e-13, row[0], test.Statistic);
            Agreement.Relative(1e-10, row[2], test.Probability);
            Agreement.Relative(1e-12, row[3], Grubbs.CriticalValue(values.Length, 0.05, side));
        }
    }

    [Fact]
    public void AtTheCriticalValueTheProbabilityIsTheLevel()
    {
        foreach (OutlierSide side in Enum.GetValues<OutlierSide>())
        {
            // One value a from the mean, five about −a/5 with squares 1: G² = 5a²/(6a²/5 + 1) is to be critical.
            double critical = Grubbs.CriticalValue(6, 0.05, side);
            double away = 1 / Math.Sqrt((5 / (critical * critical)) - (6.0 / 5));
            double[] values = [away, .. ((double[])[-0.5, -0.5, 0, 0.5, 0.5]).Select(v => v - (away / 5))];
            Grubbs test = Grubbs.Of(side == OutlierSide.Low ? [.. values.Select(v => -v)] : values, side);
            Assert.Equal(0, test.Index);
            Agreement.Relative(1e-12, critical, test.Statistic);
            Agreement.Relative(1e-10, 0.05, test.Probability);
        }
    }

    [Fact]
    public void ShiftScaleAndOrderChangeNothing()
    {
        Grubbs plain = Grubbs.Of(Levels);
        Grubbs[] others = [Grubbs.Of([.. Levels.Select(v => v + 90)]), Grubbs.Of([.. Levels.Select(v => v * -3)]),
            Grubbs.Of([.. Levels.Reverse()])];
        foreach (Grubbs other in others)
        {
            Agreement.Relative(1e-12, plain.Statistic, other.Statistic);
            Agreement.Relative(1e-10, plain.Probability, other.Probability);
        }

        Assert.Equal(5, others[1].Index);
        Assert.Equal(0, others[2].Index);
        Agreement.Relative(1e-12, plain.Probability, 2 * Grubbs.Of([.. Levels.Select(v => -v)], OutlierSide.Low).Probability);
    }

    [Fact]
    public void FartherOutIsLessProbable()
    {
        double last = 1;
        foreach (double away in (double[])[2, 4, 8, 100, 1e6])
        {
            double next = Grubbs.Of([-1, 0, 0.5, 1, away]).Probability;
            Assert.True(next < last);
            last = next;
        }
    }

    [Fact]
    public void EqualValuesHaveNoOutlierAndALoneOneIsCertain()
    {
        Assert.Equal(1, Grubbs.Of([2, 2, 2]).Probability);
        Assert.Equal(0, Grubbs.Of([2, 2, 2]).Statistic);
        Assert.Equal(0, Grubbs.Of([0, 0, 0, 4]).Probability);
        Assert.Equal(1.5, Grubbs.Of([0, 0, 0, 4]).Statistic);
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => Grubbs.Of([1, 2]));
        Assert.Throws<ArgumentException>(() => Grubbs.Of([1, 2, double.NaN]));
        Assert.Throws<ArgumentException>(() => Grubbs.Of([1, 2, double.PositiveInfinity]));
        Assert.Throws<ArgumentOutOfRangeException>(() => Grubbs.CriticalValue(2, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => Grubbs.CriticalValue(5, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Grubbs.CriticalValue(5, double.NaN));
    }
}
