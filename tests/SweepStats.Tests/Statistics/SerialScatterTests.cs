using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class SerialScatterTests
{
    [Theory]
    [InlineData(0, 1)]
    [InlineData(0.5, 1)]
    [InlineData(0.8, 0.5)]
    public void ManyColumnsTellWhatTheyWereDrawnWith(double correlation, double share)
    {
        var drawn = new SerialModel(correlation, share);
        SerialLikelihood told = SerialLikelihood.Nothing;
        for (int g = 0; g < 4; g++)
        {
            told = told.With(SerialLikelihood.Of(Drawn(10, 300, 40 + g, drawn), 300));
        }

        SerialCovariance found = SerialScatter.Of(told.Weights(10), 1, 10).For(10);
        SerialCovariance truth = drawn.Of(10);
        Assert.InRange(found.Lag1, truth.Lag1 - 0.05, truth.Lag1 + 0.05);
        Assert.InRange(found.Worth / truth.Worth, 0.8, 1.25);
        Assert.InRange(found.DegreesOfFreedom() / truth.DegreesOfFreedom(), 0.85, 1.15);
    }

    [Fact]
    public void WeightsSumToOneAndFollowTheLikelihood()
    {
        double[] nothing = SerialLikelihood.Nothing.Weights(5);
        Assert.Equal(1, nothing.Sum(), 1e-12);
        // As much weight on rows without a part of their own as on all others.
        Assert.Equal(0.5, SerialLikelihood.Models.Zip(nothing).Where(m => m.First.Share == 1).Sum(m => m.Second), 1e-12);
        double[] told = SerialLikelihood.Of(SuccessionTestTests.Rows(20, 200, 3, 0.5), 200).Weights(20);
        Assert.InRange(SerialLikelihood.Models.Zip(told).Sum(m => m.Second * m.First.At(1)), 0.42, 0.58);
    }

    [Theory]
    [InlineData(3, 0.833)]
    [InlineData(5, 0.9)]
    [InlineData(10, 0.95)]
    [InlineData(20, 0.975)]
    public void WhatLastsFallsToOneOverEWithinTwiceTheRowsAtTheLatest(int count, double most)
    {
        double[] weights = SerialLikelihood.Nothing.Weights(count);
        Assert.InRange(SerialLikelihood.Models.Where((_, i) => weights[i] > 0).Max(m => m.Correlation), most - 0.05, most + 1e-3);
    }

    [Fact]
    public void TheScatterSeenIsGivenBack()
    {
        double[] weights = SerialLikelihood.Of(SuccessionTestTests.Rows(6, 50, 5, 0.6), 50).Weights(6);
        Assert.Equal(2.5, SerialScatter.Of(weights, 2.5, 6).For(6).SampleVariance, 1e-12);
        // More of them show more of what lasts.
        Assert.True(SerialScatter.Of(weights, 2.5, 6).For(20).SampleVariance > 2.5);
    }

    [Fact]
    public void PartsAddUpLagByLag()
    {
        SerialScatter one = SerialScatter.Of(SerialLikelihood.Nothing.Weights(4), 1, 4),
            other = SerialScatter.Of(SerialLikelihood.Of(SuccessionTestTests.Rows(8, 30, 6), 30).Weights(4), 3, 4);
        for (int l = 0; l < 5; l++)
        {
            Assert.Equal(one.For(5).Lag(l) + other.For(5).Lag(l), one.With(other).For(5).Lag(l), 1e-12);
        }
    }

    [Fact]
    public void RowsOfTheirOwnContradictOthersThatLast()
    {
        SerialLikelihood still = SerialLikelihood.Of(SuccessionTestTests.Rows(10, 200, 7), 200),
            lasting = SerialLikelihood.Of(SuccessionTestTests.Rows(10, 200, 8, 0.8), 200);
        Assert.True(still.Contradicts(still.With(lasting), 10) || lasting.Contradicts(still.With(lasting), 10));
        Assert.False(lasting.Contradicts(lasting, 10));
        Assert.False(SerialLikelihood.Of(SuccessionTestTests.Rows(2, 200, 9), 200).Contradicts(lasting, 10));
    }

    private static SerialRows Drawn(int count, int columns, int seed, SerialModel model)
    {
        var random = new RandomSource((ulong)seed);
        var lasting = new double[columns];
        var rows = new double[count][];
        for (int j = 0; j < count; j++)
        {
            for (int f = 0; f < columns; f++)
            {
                double fresh = random.Normal();
                lasting[f] = j == 0 ? fresh : (model.Correlation * lasting[f])
                    + (Math.Sqrt(1 - (model.Correlation * model.Correlation)) * fresh);
            }

            rows[j] = [.. lasting.Select(l => (Math.Sqrt(model.Share) * l) + (Math.Sqrt(1 - model.Share) * random.Normal()))];
        }

        return new SerialRows(rows);
    }
}
