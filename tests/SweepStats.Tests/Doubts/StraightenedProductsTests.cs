using SweepStats.Doubts;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Doubts;

public sealed class StraightenedProductsTests
{
    [Theory]
    [InlineData(0, 60)]
    [InlineData(10, 47)]
    [InlineData(59, 60)]
    public void AWindowHasTheProductsOfWhatItsLinesLeave(int start, int end)
    {
        double[][] rows = Drawn(4, 60);
        Range[] windows = [0..5, start..end, 12..60];
        StraightenedWindow window = new StraightenedProducts(rows, windows).In(start..end);
        double[][] left = [.. rows.Select(row => EvenLine.Of(row.AsSpan(start..end)).Residuals(row.AsSpan(start..end)))];
        int columns = end - start;
        double pairs = Enumerable.Range(0, 4)
            .SelectMany(j => Enumerable.Range(0, j).Select(i => Deviations.Product(left[i], left[j]) / columns)).Average();
        Assert.Equal(columns, window.Columns);
        Assert.Equal(left.Average(r => Deviations.Product(r, r) / columns), window.MeanSquare, 1e-10);
        Assert.Equal(Math.Max(0, pairs), window.SharedVariance, 1e-10);
        Assert.Equal(Math.Max(0, window.MeanSquare - window.SharedVariance), window.Scatter);
        if (columns > 4)
        {
            Assert.True(pairs > 1);
            Assert.Equal(PairwiseCorrelation.Of(left).FisherMean, window.Correlation().FisherMean, 1e-10);
        }
    }

    [Fact]
    public void WhatRunsStraightLeavesNothing()
    {
        double[] level = [.. Enumerable.Repeat(-87.3, 31)], line = [.. Enumerable.Range(0, 31).Select(f => -20.1 - (0.7 * f))];
        StraightenedWindow window = new StraightenedProducts([level, line, level], [3..31]).In(3..31);
        Assert.Equal(0, window.MeanSquare);
        Assert.Equal(0, window.SharedVariance, 1e-10);
        Assert.True(double.IsNaN(window.Correlation().FisherMean));
    }

    [Fact]
    public void OfOneRowAllOfItIsShared()
    {
        StraightenedWindow window = new StraightenedProducts(Drawn(1, 30), [0..30]).In(0..30);
        Assert.Equal(window.MeanSquare, window.SharedVariance);
        Assert.Equal(0, window.Scatter);
    }

    // A thousand columns before the window, sixty decibels higher, change nothing.
    [Fact]
    public void LevelsBeforeAWindowHaveNoSay()
    {
        double[][] rows = Drawn(5, 100);
        double[][] behind = [.. rows.Select(row => Enumerable.Repeat(row[0] + 60, 1000).Concat(row).ToArray())];
        StraightenedWindow plain = new StraightenedProducts(rows, [20..100]).In(20..100),
            moved = new StraightenedProducts(behind, [1020..1100]).In(1020..1100);
        Assert.Equal(plain.MeanSquare, moved.MeanSquare, 1e-8);
        Assert.Equal(plain.Correlation().FisherMean, moved.Correlation().FisherMean, 1e-8);
    }

    // A wave that all rows share, a slope, and scatter of each one's own.
    private static double[][] Drawn(int count, int points)
    {
        var random = new RandomSource(8);
        return [.. Enumerable.Range(0, count).Select(
            j => Enumerable.Range(0, points).Select(i => -80 + (0.2 * i) + (3 * Math.Sin(i / 5.0)) + random.Normal()).ToArray())];
    }
}
