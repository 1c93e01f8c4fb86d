using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class MonotoneThresholdTests
{
    [Fact]
    public void SixReadingsGiveWhatHandArithmeticGives()
    {
        // 0, 0.4, 0.1, 0.9, 0.7, 1.1: neighbours out of order are pooled to 0, 0.25, 0.25, 0.8, 0.8, 1.1.
        double[] readings = [0, 0.4, 0.1, 0.9, 0.7, 1.1];
        Assert.Equal(0, MonotoneThreshold.FirstAtOrAbove(readings, -0.1));
        Assert.Equal(1, MonotoneThreshold.FirstAtOrAbove(readings, 0.2));
        Assert.Equal(3, MonotoneThreshold.FirstAtOrAbove(readings, 0.3));
        Assert.Equal(5, MonotoneThreshold.FirstAtOrAbove(readings, 0.9));
        Assert.Equal(6, MonotoneThreshold.FirstAtOrAbove(readings, 2));
        Assert.Equal(0, MonotoneThreshold.FirstAtOrAbove([], 1));
    }

    [Fact]
    public void RowsThatScatterAgreeWithR()
    {
        ILookup<double, double> series = Fixtures.Numbers("oracles/isotonic-values.csv").ToLookup(row => row[0], row => row[1]);
        double[][] places = Fixtures.Numbers("oracles/isotonic-places.csv");
        Assert.Equal(49, places.Length);
        Assert.All(places, row => Assert.Equal(row[2], MonotoneThreshold.FirstAtOrAbove([.. series[row[0]]], row[1])));
    }

    [Fact]
    public void ShiftAndScaleMoveReadingsAndLevelAlike()
    {
        double[] readings = [0.3, -0.2, 0.5, 0.1, 0.9, 1.4, 1.2];
        foreach (double level in new[] { 0.15, 0.4, 1 })
        {
            int first = MonotoneThreshold.FirstAtOrAbove(readings, level);
            Assert.Equal(first, MonotoneThreshold.FirstAtOrAbove([.. readings.Select(r => r + 20)], level + 20));
            Assert.Equal(first, MonotoneThreshold.FirstAtOrAbove([.. readings.Select(r => r * 8)], level * 8));
        }
    }

    [Fact]
    public void AHigherLevelIsNeverReachedEarlier()
    {
        double[] readings = [0.3, -0.2, 0.5, 0.1, 0.9, 1.4, 1.2];
        int[] firsts = [.. Enumerable.Range(-10, 40).Select(i => MonotoneThreshold.FirstAtOrAbove(readings, i * 0.1))];
        Assert.Equal(firsts.Order(), firsts);
    }
}
