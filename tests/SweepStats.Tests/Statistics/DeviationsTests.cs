using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class DeviationsTests
{
    [Fact]
    public void ThreeValuesGiveWhatHandArithmeticGives()
    {
        Assert.Equal([-2, -1, 3], Deviations.FromMean([1, 2, 6]));
        Assert.Equal(14, Deviations.Product([-2, -1, 3], [-2, -1, 3]));
        Assert.Throws<ArgumentException>(() => Deviations.FromMean([]));
    }

    [Fact]
    public void DeviationsAddUpToNothingFarFromZeroToo()
    {
        double[] values = [.. Enumerable.Range(0, 101).Select(i => 1e12 + (i % 7 * 0.1))];
        double[] deviations = Deviations.FromMean(values);
        Assert.Equal(0, deviations.Sum(), 1e-11);
        Assert.Equal(values[3] - values[1], deviations[3] - deviations[1], 1e-14);
    }

    [Fact]
    public void EqualValuesAreNeverTakenForScatter()
    {
        // The mean of equal decimals is off by a unit in the last place for many of these; no test may make anything of it.
        for (int tenths = -1100; tenths < 0; tenths += 7)
        {
            int count = 8 + (-tenths % 23);
            double[] level = [.. Enumerable.Repeat(tenths / 10.0, count)];
            double[] x = [.. Enumerable.Range(0, count).Select(i => (double)i)];
            Assert.All(Deviations.FromMean(level), deviation => Assert.Equal(0, deviation));
            Assert.Equal(1, Grubbs.Of(level).Probability);
            Assert.Equal([0, 0, 0], GeneralisedEsd.Of(level, 3, 0.05).Statistics);
            Assert.Single(GeneralisedEsd.Of([.. level, 5], 3, 0.05).Outliers);
            Assert.Equal(0, Grubbs.Of([.. level, 5]).Probability);
            Assert.Equal(1, MannKendall.Of(level).Probability);
            Assert.Equal(0, RegressionLine.Of(x, level).Slope.Value);
            Assert.True(double.IsNaN(RegressionLine.Of(x, level).Slope.Probability));
            Assert.Throws<ArgumentException>(() => RegressionLine.Of(level, x));
            Assert.True(double.IsNaN(Correlation.Pearson(x, level)));
            Assert.True(double.IsNaN(AndersonDarling.Of(level).Statistic));
            double[] two = [.. level, .. level.Select(v => v + 0.3)];
            int[] groups = [.. level.Select(_ => 0), .. level.Select(_ => 1)];
            Assert.True(double.IsNaN(Levene.AboutMeans(two, groups).F));
            Assert.True(double.IsNaN(Levene.AboutMedians(two, groups).F));
        }
    }
}
