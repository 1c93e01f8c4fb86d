using SweepStats.Doubts;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Doubts;

public sealed class StraightenedRowsTests
{
    [Fact]
    public void WhatIsLeftIsWhatTheLineOfLeastSquaresLeaves()
    {
        double[][] rows = Drawn(4, 60);
        var left = new StraightenedRows(rows, 10..47);
        double[] place = [.. Enumerable.Range(0, 37).Select(i => (double)i)];
        for (int j = 0; j < rows.Length; j++)
        {
            RegressionLine line = RegressionLine.Of(place, rows[j].AsSpan(10, 37));
            Assert.All(Enumerable.Range(0, 37), i => Assert.Equal(rows[j][10 + i] - line.At(i), left.Rows[j][i], 1e-11));
        }
    }

    [Fact]
    public void TheSharedVarianceIsTheMeanProductOfPairs()
    {
        var left = new StraightenedRows(Drawn(5, 40), 0..40);
        double pairs = Enumerable.Range(0, 5).SelectMany(j => Enumerable.Range(0, j).Select(i => Deviations.Product(left.Rows[i], left.Rows[j]) / 40)).Average();
        Assert.True(pairs > 1);
        Assert.Equal(pairs, left.SharedVariance, 1e-11);
        Assert.Equal(left.Rows.Average(r => Deviations.Product(r, r) / 40), left.MeanSquare, 1e-11);
    }

    [Fact]
    public void EqualLevelsLeaveExactlyNothing()
    {
        var left = new StraightenedRows([.. Enumerable.Repeat(Enumerable.Repeat(-87.3, 31).ToArray(), 3)], 0..31);
        Assert.Equal(0, left.MeanSquare);
        Assert.Equal(0, left.SharedVariance);
    }

    [Fact]
    public void OfOneRowAllOfItIsShared()
    {
        var left = new StraightenedRows(Drawn(1, 30), 0..30);
        Assert.Equal(left.MeanSquare, left.SharedVariance);
    }

    // A wave that all rows share, a slope, and scatter of each one's own.
    private static double[][] Drawn(int count, int points)
    {
        var random = new RandomSource(8);
        return [.. Enumerable.Range(0, count).Select(j => Enumerable.Range(0, points).Select(i => -80 + (0.2 * i) + (3 * Math.Sin(i / 5.0)) + random.Normal()).ToArray())];
    }
}
