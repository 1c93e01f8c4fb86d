using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class PairwiseCorrelationTests
{
    private static readonly double[][] Rows = [[1, 2, 3, 4], [2, 1, 4, 3], [1, 2, 4, 3]];

    [Fact]
    public void ThreeRowsGiveWhatHandArithmeticGives()
    {
        // r 3/5, 4/5, 4/5; artanh of them ½ln 4, ½ln 9, ½ln 9: mean ln(18)/3, variance 1/(3·1).
        PairwiseCorrelation rows = PairwiseCorrelation.Of(Rows);
        Assert.Equal(0.6, Correlation.Pearson(Rows[0], Rows[1]), 1e-15);
        Assert.Equal(2.2 / 3, rows.Mean, 1e-15);
        Assert.Equal(Math.Log(18) / 3, rows.FisherMean, 1e-14);
        Assert.Equal(MathNet.Numerics.Distributions.Normal.CDF(0, 1, -Math.Log(18) / Math.Sqrt(3)), rows.Probability, 1e-14);
        Assert.Equal(3, rows.Pairs);
        Assert.Equal(4, rows.Columns);
    }

    [Fact]
    public void FishersTableComesOut()
    {
        // Fisher 1921, from memory: r = 0.5 is z = 0.5493, r = 0.9 is 1.4722. x a half-turn wave, y at the angle whose cosine is
        // r.
        foreach ((double r, double z) in ((double, double)[])[(0.5, 0.5493), (0.9, 1.4722)])
        {
            double[] x = [1, 0, -1, 0];
            double[] y = [r, Math.Sqrt(1 - (r * r)), -r, -Math.Sqrt(1 - (r * r))];
            Assert.Equal(z, PairwiseCorrelation.Of([x, y]).FisherMean, 5e-5);
        }
    }

    [Fact]
    public void PublishedRowsAgreeWithR()
    {
        // Pearson's coefficient is held against a certified value in RegressionLineTests (R² of Norris).
        string[][] cells = Fixtures.Cells("oracles/correlation-pairs.csv");
        double[][] table = Fixtures.Numbers("oracles/correlation-pairs.csv");
        for (int i = 0; i < table.Length; i++)
        {
            double[][] rows = Case(cells[i][0], (int)table[i][1]);
            PairwiseCorrelation all = PairwiseCorrelation.Of(rows);
            Agreement.Relative(1e-10, table[i][2], Correlation.Pearson(rows[0], rows[1]), i);
            Agreement.Relative(1e-10, table[i][3], all.Mean, i);
            Agreement.Relative(1e-10, table[i][4], all.FisherMean, i);
            Agreement.Relative(1e-10, table[i][5], all.Probability, i);
        }
    }

    [Fact]
    public void OffsetsScalesAndTheOrderOfRowsAndColumnsChangeNothing()
    {
        double[][] rows = Case("arsenic", 6);
        PairwiseCorrelation plain = PairwiseCorrelation.Of(rows);
        PairwiseCorrelation[] others =
        [
            PairwiseCorrelation.Of([.. rows.Select((row, i) => row.Select(v => v - (30 * i)).ToArray())]),
            PairwiseCorrelation.Of([.. rows.Select((row, i) => row.Select(v => v * (1 + i)).ToArray())]),
            PairwiseCorrelation.Of([.. rows.Reverse()]),
            PairwiseCorrelation.Of([.. rows.Select(row => row.Reverse().ToArray())]),
        ];
        Assert.All(others, other => Agreement.Relative(1e-11, plain.Mean, other.Mean));
        Assert.All(others, other => Agreement.Relative(1e-11, plain.FisherMean, other.FisherMean));
        Assert.Equal(-Correlation.Pearson(rows[0], rows[1]), Correlation.Pearson(rows[0], [.. rows[1].Select(v => -v)]), 1e-14);
        Assert.Equal(Correlation.Pearson(rows[0], rows[1]), Correlation.Pearson(rows[1], rows[0]));
    }

    [Fact]
    public void CopiesAreSharedBeyondDoubtAndOppositesAreNot()
    {
        double[] row = [.. Enumerable.Range(0, 40).Select(i => Math.Sin(i * i))];
        PairwiseCorrelation copies = PairwiseCorrelation.Of([row, [.. row.Select(v => v + 6)]]);
        Assert.Equal(1, copies.Mean, 1e-15);
        Assert.True(copies.Probability < 1e-300);
        PairwiseCorrelation opposites = PairwiseCorrelation.Of([row, [.. row.Select(v => -v)]]);
        Assert.Equal(-1, opposites.Mean, 1e-15);
        Assert.Equal(1, opposites.Probability);
        Assert.True(double.IsFinite(PairwiseCorrelation.Of([row, row, [.. row.Select(v => -v)]]).FisherMean));
    }

    [Fact]
    public void FewerIndependentColumnsLessenTheEvidence()
    {
        PairwiseCorrelation rows = PairwiseCorrelation.Of([[1, 2, 3, 5, 4, 7], [1, 3, 2, 5, 6, 8]]);
        Assert.Equal(rows.Probability, rows.UpperTail(6));
        Assert.True(rows.UpperTail(4.5) > rows.Probability && rows.UpperTail(4.5) < 0.5);
        Assert.Throws<ArgumentOutOfRangeException>(() => rows.UpperTail(3));
        Assert.Throws<ArgumentOutOfRangeException>(() => rows.UpperTail(double.NaN));
    }

    [Fact]
    public void NoiseIsTakenForAPatternAsOftenAsRMeasures()
    {
        // Near 5 % for many columns; skewed, 6 %, for ten rows of twenty. Rows with offsets of their own. Slack: four binomial
        // deviations of both.
        const int draws = 4_000;
        foreach (double[] row in Fixtures.Numbers("oracles/correlation-size.csv"))
        {
            var random = new RandomSource(1921);
            int alarms = 0;
            for (int draw = 0; draw < draws; draw++)
            {
                double[][] rows = [.. Enumerable.Range(0, (int)row[0]).Select(at => Noise(random, (int)row[1], 9 * at))];
                alarms += PairwiseCorrelation.Of(rows).Probability <= 0.05 ? 1 : 0;
            }

            Agreement.Within(4 * Math.Sqrt(row[3] * (1 - row[3]) * ((1.0 / draws) + (1 / row[2]))), row[3],
                (double)alarms / draws, row);
            Assert.InRange(row[3], 0.045, 0.065);
        }
    }

    [Fact]
    public void WhatHasNoAnswerIsRefused()
    {
        Assert.Throws<ArgumentException>(() => PairwiseCorrelation.Of([]));
        Assert.Throws<ArgumentException>(() => PairwiseCorrelation.Of([[1, 2, 3, 4]]));
        Assert.Throws<ArgumentException>(() => PairwiseCorrelation.Of([[1, 2, 3], [1, 2, 4]]));
        Assert.Throws<ArgumentException>(() => PairwiseCorrelation.Of([[1, 2, 3, 4], [1, 2, 3, 4, 5]]));
        Assert.Throws<ArgumentException>(() => PairwiseCorrelation.Of([[1, 2, 3, double.NaN], [1, 2, 3, 4]]));
        Assert.Throws<ArgumentException>(() => Correlation.Pearson([1], [1]));
        Assert.Throws<ArgumentException>(() => Correlation.Pearson([1, 2], [1, 2, 3]));
        Assert.Throws<ArgumentException>(() => Correlation.Pearson([1, 2], [1, double.PositiveInfinity]));
        Assert.True(double.IsNaN(Correlation.Pearson([1, 2, 3], [4, 4, 4])));
        Assert.True(double.IsNaN(PairwiseCorrelation.Of([[1, 2, 3, 4], [5, 5, 5, 5]]).Probability));
    }

    private static double[] Noise(RandomSource random, int columns, double offset) =>
        [.. Enumerable.Range(0, columns).Select(_ => random.Normal() + offset)];

    private static double[][] Case(string name, int count)
    {
        (string path, int column) = name switch
        {
            "gear" => ("nist-gear/gear.csv", 1),
            "arsenic" => ("epa-arsenic/arsenic.csv", 0),
            _ => ("nist-strd-univariate/Michelso.csv", 0),
        };
        double[] values = [.. Fixtures.Numbers($"published/{path}").Select(row => row[column])];
        return [.. values.Chunk(values.Length / count)];
    }
}
