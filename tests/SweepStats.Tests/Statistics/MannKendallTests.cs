using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class MannKendallTests
{
    [Fact]
    public void ShortWorkedExamplesComeOut()
    {
        // From memory: Gilbert 1987, 10 15 14 20: S 4, p 0.167; US EPA QA/G-9, 5 6 11 8 10: S 6, p 0.117, both one-sided and
        // exact.
        MannKendall four = MannKendall.Of([10, 15, 14, 20]);
        Assert.Equal(4, four.S);
        Assert.Equal(0.167, four.RisingProbability, 5e-4);
        MannKendall five = MannKendall.Of([5, 6, 11, 8, 10]);
        Assert.Equal(6, five.S);
        Assert.Equal(0.117, five.RisingProbability, 5e-4);
        Assert.True(four.IsExact && five.IsExact);
    }

    [Fact]
    public void TheSulfateOfTheEpaComesOut()
    {
        // US EPA, Unified Guidance 2009, example 17-6: ties, so the normal approximation.
        MannKendall test = MannKendall.Of(Case("sulfate").Y);
        Assert.Equal(194, test.S);
        Assert.Equal(1428, test.Variance);
        Assert.Equal(5.107322, test.Score, 5e-7);
        Assert.Equal(3.2676e-07, test.Probability, 5e-12);
        Assert.False(test.IsExact);
    }

    [Fact]
    public void TheSodiumOfTheEpaComesOut()
    {
        // US EPA, Unified Guidance 2009, example 17-7; variance and score recomputed.
        MannKendall test = MannKendall.Of(Case("sodium").Y);
        Assert.Equal(25, test.S);
        Assert.Equal(125, test.Variance);
        Assert.Equal(2.147, test.Score, 5e-4);
        Assert.True(test.IsExact);
    }

    [Fact]
    public void PublishedSeriesAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/trend-kendall.csv");
        double[][] rows = Fixtures.Numbers("oracles/trend-kendall.csv");
        for (int i = 0; i < rows.Length; i++)
        {
            MannKendall test = MannKendall.Of(Case(cells[i][0]).Y);
            Assert.Equal(rows[i][1], test.S);
            Assert.Equal(rows[i][2] == 1, test.IsExact);
            Agreement.Relative(1e-10, rows[i][4], test.Probability, i);
            // R leaves blank (see the script) what its correction towards 0 makes something else.
            double[][] pairs =
                [[rows[i][3], test.Score], [rows[i][5], test.RisingProbability], [rows[i][6], test.FallingProbability]];
            Assert.All(pairs.Where(pair => !double.IsNaN(pair[0])), pair => Agreement.Relative(1e-10, pair[0], pair[1], i));
        }
    }

    [Fact]
    public void TiesTakeFromTheVarianceWhatHandArithmeticSays()
    {
        // 1, 1, 2, 3, 3, 3: [6·5·17 − 2·1·9 − 3·2·11]/18 = 426/18; S: 15 pairs less 1 and 3 ties.
        MannKendall test = MannKendall.Of([1, 1, 2, 3, 3, 3]);
        Assert.Equal(11, test.S);
        Assert.Equal(426.0 / 18, test.Variance, 1e-14);
        Assert.Equal(10 / Math.Sqrt(426.0 / 18), test.Score, 1e-14);
    }

    [Theory]
    [InlineData("sulfate")]
    [InlineData("sodium")]
    public void OnlyTheOrderCountsAndTurningRoundSwapsRiseAndFall(string series)
    {
        double[] values = Case(series).Y;
        MannKendall plain = MannKendall.Of(values);
        Assert.Equal(plain, MannKendall.Of([.. values.Select(v => (v * 3) - 90)]));
        Assert.Equal(plain, MannKendall.Of([.. values.Select(v => Math.Exp(v / 100))]));
        foreach (MannKendall turned in (MannKendall[])[MannKendall.Of([.. values.Reverse()]),
            MannKendall.Of([.. values.Select(v => -v)])])
        {
            Assert.Equal(-plain.S, turned.S);
            Assert.Equal(-plain.Score, turned.Score);
            Assert.Equal(plain.RisingProbability, turned.FallingProbability);
            Assert.Equal(plain.FallingProbability, turned.RisingProbability);
        }
    }

    [Fact]
    public void TheExactAndTheNormalProbabilityMeet()
    {
        // 50 values are exact, 51 normal: the two have to be near each other for the same score.
        double[] fifty = [.. Enumerable.Range(0, 50).Select(i => (i * 17 % 50) + (0.1 * i))];
        MannKendall exact = MannKendall.Of(fifty);
        Assert.True(exact.IsExact && !MannKendall.Of([.. fifty, 24.5]).IsExact);
        double normal = MathNet.Numerics.Distributions.Normal.CDF(0, 1, -(exact.S - 1) / Math.Sqrt(exact.Variance));
        Assert.InRange(exact.RisingProbability, 1e-4, 0.2);
        Agreement.Within(1e-4, normal, exact.RisingProbability);
    }

    [Fact]
    public void EqualValuesHaveNoTrend()
    {
        MannKendall test = MannKendall.Of([3, 3, 3, 3]);
        Assert.Equal(0, test.S);
        Assert.Equal(0, test.Variance);
        Assert.Equal(0, test.Score);
        Assert.Equal(1, test.Probability);
    }

    [Fact]
    public void EightLevelValuesAreSuspectedAsOftenAsTheTableSays()
    {
        // From the table: P(S ≥ 18) = 0.015575 and P(S ≥ 16) = 0.030506, so 5 % on both sides is 3.115 % in truth. Slack: four
        // binomial deviations.
        const int draws = 20_000;
        const double truth = 2 * 0.015575;
        var random = new RandomSource(1945);
        int alarms = 0;
        for (int draw = 0; draw < draws; draw++)
        {
            double[] values = [.. Enumerable.Range(0, 8).Select(_ => random.Normal())];
            alarms += MannKendall.Of(values).Probability <= 0.05 ? 1 : 0;
        }

        Agreement.Within(4 * Math.Sqrt(truth * (1 - truth) / draws), truth, (double)alarms / draws);
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => MannKendall.Of([1, 2]));
        Assert.Throws<ArgumentException>(() => MannKendall.Of([1, 2, double.NaN]));
        Assert.Throws<ArgumentException>(() => MannKendall.Of([1, 2, double.NegativeInfinity]));
    }

    /// <summary>The series of fixtures/oracles/trend.R by their names there.</summary>
    internal static PairGroup Case(string name)
    {
        (string path, int x, int y) = name switch
        {
            "sulfate" => ("epa-sulfate-trend/sulfate.csv", 0, 1),
            "sodium" => ("epa-sodium-trend/sodium.csv", 0, 1),
            "norris" => ("nist-strd-linear/Norris.csv", 1, 0),
            "mass" => ("nist-strd-univariate/Mavro.csv", -1, 0),
            "naphthalene" => ("epa-naphthalene/naphthalene.csv", -1, 2),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, "No such series."),
        };
        double[][] rows = Fixtures.Numbers($"published/{path}");
        return new([.. rows.Select((row, i) => x < 0 ? i + 1 : row[x])], [.. rows.Select(row => row[y])]);
    }
}
