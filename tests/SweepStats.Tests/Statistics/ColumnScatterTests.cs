using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class ColumnScatterTests
{
    // Fewer columns than a register holds, and some more than whole registers.
    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 3)]
    [InlineData(20, 19)]
    public void EachColumnHasTheBitsThatItHasAlone(int count, int columns)
    {
        var random = new RandomSource((ulong)count);
        double[][] rows = [.. Enumerable.Range(0, count)
            .Select(_ => Enumerable.Range(0, columns).Select(_ => -80 + random.Normal()).ToArray())];
        var scatter = ColumnScatter.Of(rows);
        double[][] distances = ColumnScatter.Distances(rows);
        for (int f = 0; f < columns; f++)
        {
            double[] column = [.. rows.Select(row => row[f])];
            Assert.Equal(Sample.Mean(column), scatter.Means[f]);
            Assert.Equal(Sample.SquaredDeviations(column, scatter.Means[f]), scatter.SquaredDeviations[f]);
            Assert.Equal(Deviations.FromMean(column), distances.Select(row => row[f]));
        }
    }

    [Fact]
    public void ByHand()
    {
        var scatter = ColumnScatter.Of([[1, -4, 7], [3, -4, 8]]);
        Assert.Equal([2, -4, 7.5], scatter.Means);
        Assert.Equal([2, 0, 0.5], scatter.SquaredDeviations);
        Assert.Equal([-1, 0, -0.5], ColumnScatter.Distances([[1, -4, 7], [3, -4, 8]])[0]);
    }

    // The bits of a plain sum, row after row.
    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 8)]
    [InlineData(20, 19)]
    public void PlainMeansAreThoseOfEachColumn(int count, int columns)
    {
        var random = new RandomSource((ulong)columns);
        double[][] rows = [.. Enumerable.Range(0, count)
            .Select(_ => Enumerable.Range(0, columns).Select(_ => -80 + random.Normal()).ToArray())];
        var sums = new ColumnSums(columns);
        Array.ForEach(rows, row => sums.Add(row));
        Assert.Equal(Enumerable.Range(0, columns).Select(f => rows.Sum(row => row[f]) / count), sums.Means());
    }

    // Their mean is off by a unit in the last place, which must not look like scatter.
    [Fact]
    public void EqualLevelsDoNotScatter() =>
        Assert.All(ColumnScatter.Distances([.. Enumerable.Repeat(new[] { -87.3, 0.1, 1e-9 }, 7)]),
            row => Assert.Equal([0, 0, 0], row));
}
