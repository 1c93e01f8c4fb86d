using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class LeveneTests
{
    private static readonly double[] Values = [1, 2, 4, 10, 14, 20];
    private static readonly int[] Groups = [0, 0, 0, 1, 1, 1];

    [Fact]
    public void TwoGroupsGiveWhatHandArithmeticGives()
    {
        // Distances from the medians 2 and 14: 1, 0, 2 and 4, 0, 6; means 1 and 10/3. Between 6·(7/6)² = 49/6; within 2 + 56/3 on
        // 4 degrees of freedom.
        OneWayAnova table = Levene.AboutMedians(Values, Groups);
        Assert.Equal(1, table.BetweenDegreesOfFreedom);
        Assert.Equal(4, table.WithinDegreesOfFreedom);
        Agreement.Relative(1e-14, 49.0 / 6 / (62.0 / 12), table.F);
        // From the means 7/3 and 44/3: 4/3, 1/3, 5/3 and 14/3, 2/3, 16/3; means 10/9 and 32/9.
        Agreement.Relative(1e-13,
            6 * Math.Pow(11.0 / 9, 2) / ((((16 + 1 + 25) / 9.0) - (100.0 / 27) + ((196 + 4 + 256) / 9.0) - (1024.0 / 27)) / 4),
            Levene.AboutMeans(Values, Groups).F);
    }

    [Fact]
    public void TheGearsOfTheNistHandbookComeOut()
    {
        // NIST/SEMATECH e-Handbook, 1.3.5.10. From memory W = 1.705910; exact rational arithmetic on the same data gives
        // 1.7059177.
        (double[] values, int[] groups) = Case("gear");
        OneWayAnova medians = Levene.AboutMedians(values, groups);
        Assert.Equal(1.70591, medians.F, 1e-5);
        Agreement.Relative(1e-12, 1.7059176930009012, medians.F);
        Assert.Equal(0.0991, medians.Probability, 5e-5);
        Assert.Equal(2.1595, Levene.AboutMeans(values, groups).F, 5e-5);
        Assert.Equal(0.0322, Levene.AboutMeans(values, groups).Probability, 5e-5);
    }

    [Fact]
    public void TheArsenicOfTheEpaComesOut()
    {
        // US EPA, Unified Guidance 2009, example 11-2.
        (double[] values, int[] groups) = Case("arsenic");
        OneWayAnova means = Levene.AboutMeans(values, groups);
        Assert.Equal(5, means.BetweenDegreesOfFreedom);
        Assert.Equal(18, means.WithinDegreesOfFreedom);
        Assert.Equal(4.564176, means.F, 5e-7);
        Assert.Equal(0.007294, means.Probability, 5e-7);
        Assert.Equal(0.5505, Levene.AboutMedians(values, groups).F, 5e-5);
        Assert.Equal(0.736, Levene.AboutMedians(values, groups).Probability, 5e-4);
    }

    [Fact]
    public void PublishedGroupsAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/levene.csv");
        double[][] rows = Fixtures.Numbers("oracles/levene.csv");
        for (int i = 0; i < rows.Length; i++)
        {
            (double[] values, int[] groups) = Case(cells[i][0]);
            OneWayAnova table = cells[i][1] == "mean" ? Levene.AboutMeans(values, groups) : Levene.AboutMedians(values, groups);
            Assert.Equal(rows[i][2], table.BetweenDegreesOfFreedom);
            Assert.Equal(rows[i][3], table.WithinDegreesOfFreedom);
            // The atomic weights scatter by 1e-7 of themselves: storing them costs as many digits.
            double tolerance = cells[i][0] == "weights" ? 1e-8 : 1e-11;
            Agreement.Relative(tolerance, rows[i][4], table.F, i);
            Agreement.Relative(tolerance, rows[i][5], table.Probability, i);
        }
    }

    [Fact]
    public void ShiftsOfGroupsScaleAndOrderChangeNothing()
    {
        (double[] values, int[] groups) = Case("arsenic");
        foreach (Test test in (Test[])[Levene.AboutMedians, Levene.AboutMeans])
        {
            double plain = test(values, groups).F;
            Agreement.Relative(1e-11, plain, test([.. values.Zip(groups, (v, g) => v + (40 * g))], groups).F);
            Agreement.Relative(1e-11, plain, test([.. values.Select(v => v * -3)], groups).F);
            Agreement.Relative(1e-11, plain, test([.. values.Reverse()], [.. groups.Reverse()]).F);
            Agreement.Relative(1e-11, plain, test(values, [.. groups.Select(g => 5 - g)]).F);
        }
    }

    [Fact]
    public void StretchingOneGroupIsFound()
    {
        (double[] values, int[] groups) = Case("gear");
        double last = 1;
        foreach (double factor in (double[])[3, 6, 12])
        {
            double next = Levene.AboutMedians([.. values.Zip(groups, (v, g) => g == 0 ? v * factor : v)], groups).Probability;
            Assert.True(next < last);
            last = next;
        }

        Assert.True(last < 1e-6);
    }

    [Fact]
    public void GroupsWithoutScatterHaveNoAnswer()
    {
        Assert.True(double.IsNaN(Levene.AboutMedians([1, 1, 1, 2, 2, 2], Groups).F));
        Assert.True(double.IsNaN(Levene.AboutMedians([1, 1, 1, 2, 2, 2], Groups).Probability));
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => Levene.AboutMedians(Values, [0, 0, 0, 1, 1]));
        Assert.Throws<ArgumentException>(() => Levene.AboutMedians(Values, [0, 0, 0, 1, 1, 1, 1]));
        Assert.Throws<ArgumentException>(() => Levene.AboutMedians(Values, [0, 0, 0, 0, 1, 1]));
        Assert.Throws<ArgumentException>(() => Levene.AboutMedians(Values, [0, 0, 0, 0, 0, 0]));
        Assert.Throws<ArgumentException>(() => Levene.AboutMedians(Values, [0, 0, 0, 2, 2, 2]));
        Assert.Throws<ArgumentException>(() => Levene.AboutMeans([1, 2, double.NaN, 3, 4, 5], Groups));
        Assert.Throws<ArgumentException>(() => Levene.AboutMeans([], []));
    }

    private delegate OneWayAnova Test(ReadOnlySpan<double> values, ReadOnlySpan<int> groups);

    private static (double[] Values, int[] Groups) Case(string name)
    {
        (string path, int value, int group) = name switch
        {
            "gear" => ("nist-gear/gear.csv", 1, 0),
            "arsenic" => ("epa-arsenic/arsenic.csv", 0, 2),
            "weights" => ("nist-strd-anova/AtmWtAg.csv", 1, 0),
            "sulfate" => ("epa-sulfate/sulfate.csv", 1, 0),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such groups."),
        };
        string[][] cells = Fixtures.Cells($"published/{path}");
        string[] names = [.. cells.Select(row => row[group]).Distinct()];
        return ([.. Fixtures.Numbers($"published/{path}").Select(row => row[value])],
            [.. cells.Select(row => Array.IndexOf(names, row[group]))]);
    }
}
