using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class AndersonDarlingTests
{
    [Fact]
    public void FourAndFourGiveWhatHandArithmeticGives()
    {
        // Four at −1, four at 1: s = √(8/7), z = ±√(7/8). By symmetry A² = −8 − (2/8)[16·ln Φ(−z) + 48·ln Φ(z)], with
        // Φ(0.9354143) = 0.8252130 from a table of the normal distribution.
        AndersonDarling test = AndersonDarling.Of([1, -1, 1, -1, -1, 1, 1, -1]);
        const double below = 0.8252130;
        Assert.Equal(-8 - (4 * Math.Log(1 - below)) - (12 * Math.Log(below)), test.Statistic, 2e-5);
        Assert.Equal(test.Statistic * (1 + (0.75 / 8) + (2.25 / 64)), test.Adjusted, 1e-14);
    }

    [Fact]
    public void ThePublishedPercentagePointsComeOut()
    {
        // D'Agostino and Stephens 1986, table 4.7, from memory.
        foreach (double[] row in Fixtures.Numbers("published/anderson-darling/points.csv"))
        {
            Agreement.Relative(0.02, row[0], AndersonDarling.Fit(row[1]), row);
        }
    }

    [Fact]
    public void PublishedSamplesAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/normality.csv");
        double[][] rows = Fixtures.Numbers("oracles/normality.csv");
        for (int i = 0; i < rows.Length; i++)
        {
            double[] values = Case(cells[i][0]);
            AndersonDarling test = AndersonDarling.Of(values);
            Assert.Equal(rows[i][1], values.Length);
            Agreement.Relative(1e-11, rows[i][2], test.Statistic, i);
            Agreement.Relative(1e-11, rows[i][3], test.Adjusted, i);
            Agreement.Relative(1e-10, rows[i][4], test.Probability, i);
        }
    }

    [Fact]
    public void ShiftScaleAndOrderChangeNothing()
    {
        double[] values = Case("arsenic");
        double plain = AndersonDarling.Of(values).Statistic;
        Agreement.Relative(1e-11, plain, AndersonDarling.Of([.. values.Select(v => v - 90)]).Statistic);
        Agreement.Relative(1e-11, plain, AndersonDarling.Of([.. values.Select(v => v * 7)]).Statistic);
        Agreement.Relative(1e-11, plain, AndersonDarling.Of([.. values.Select(v => v * -7)]).Statistic);
        Agreement.Relative(1e-11, plain, AndersonDarling.Of([.. values.Reverse()]).Statistic);
    }

    [Fact]
    public void TheProbabilityFallsWithinEachSpecimenAndHardlyJumpsBetween()
    {
        double last = 1;
        for (double adjusted = 0.02; adjusted < 12; adjusted += 0.01)
        {
            double next = AndersonDarling.Fit(adjusted);
            Assert.InRange(next, 3.7e-24, last + 0.0031);
            last = next;
        }
    }

    [Fact]
    public void OneNormalSampleInTwentyIsSuspected()
    {
        // Slack: four binomial deviations, and 0.002 for the published fit.
        const int draws = 10_000;
        foreach (int count in (int[])[8, 30])
        {
            var random = new RandomSource(1986);
            int alarms = 0;
            for (int draw = 0; draw < draws; draw++)
            {
                double[] values = [.. Enumerable.Range(0, count).Select(_ => random.Normal())];
                alarms += AndersonDarling.Of(values).Probability <= 0.05 ? 1 : 0;
            }

            Agreement.Within((4 * Math.Sqrt(0.05 * 0.95 / draws)) + 0.002, 0.05, (double)alarms / draws, count);
        }
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => AndersonDarling.Of([1, 2, 3, 4, 5, 6, 7]));
        Assert.Throws<ArgumentException>(() => AndersonDarling.Of([1, 2, 3, 4, 5, 6, 7, double.NaN]));
        Assert.True(double.IsNaN(AndersonDarling.Of([2, 2, 2, 2, 2, 2, 2, 2]).Probability));
    }

    // The samples of fixtures/oracles/normality.R by their names there.
    private static double[] Case(string name)
    {
        if (name == "far")
        {
            return [.. Enumerable.Range(0, 2000).Select(i => -1 + (i * 2.0 / 1999)), 500];
        }

        (string path, int column) = name switch
        {
            "rosner" => ("rosner-1983/values.csv", 0),
            "naphthalene" => ("epa-naphthalene/naphthalene.csv", 2),
            "mass" => ("nist-grubbs/mass.csv", 0),
            "gear" => ("nist-gear/gear.csv", 1),
            "arsenic" => ("epa-arsenic/arsenic.csv", 0),
            "sodium" => ("epa-sodium-trend/sodium.csv", 1),
            "lew" => ("nist-strd-univariate/Lew.csv", 0),
            "lottery" => ("nist-strd-univariate/Lottery.csv", 0),
            "michelso" => ("nist-strd-univariate/Michelso.csv", 0),
            "digits" => ("nist-strd-univariate/PiDigits.csv", 0),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such sample."),
        };
        return [.. Fixtures.Numbers($"published/{path}").Select(row => row[column])];
    }
}
