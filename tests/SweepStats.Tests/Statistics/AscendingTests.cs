using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class AscendingTests
{
    [Fact]
    public void NumbersOfEverySizeAndSignAreInOrder()
    {
        double[] values = [3, double.PositiveInfinity, -1e300, 0, -double.Epsilon, 1e-300, double.NegativeInfinity, -3, 3];
        double[] many = [.. Enumerable.Repeat(values, 20).SelectMany(v => v)];
        Ascending.Sort(values);
        Ascending.Sort(many);
        double[] expected = [double.NegativeInfinity, -1e300, -3, -double.Epsilon, 0, 1e-300, 3, 3, double.PositiveInfinity];
        Assert.Equal(expected, values);
        Assert.Equal([.. expected.SelectMany(v => Enumerable.Repeat(v, 20))], many);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(31)]
    [InlineData(33)]
    [InlineData(1000)]
    public void TheOrderIsThatOfAComparison(int count)
    {
        var random = new RandomSource((ulong)count);
        double[] values = [.. Enumerable.Range(0, count).Select(_ => Math.Round(random.Normal(), 2) - 50)];
        double[] expected = [.. values.Order()];
        for (int place = 0; place < count; place += Math.Max(1, count / 37))
        {
            double[] parted = [.. values];
            Assert.Equal(expected[place], Ascending.At(parted, place));
            Assert.All(parted[..place], v => Assert.True(v <= expected[place]));
            Assert.All(parted[place..], v => Assert.True(v >= expected[place]));
        }

        Ascending.Sort(values);
        Assert.Equal(expected, values);
    }

    [Fact]
    public void NoLayoutOfTheNumbersIsTooMuch()
    {
        int[] all = [.. Enumerable.Range(0, 5000)];
        IEnumerable<double>[] layouts = [all.Select(i => (double)i), all.Select(i => -(double)i), all.Select(_ => 7.0),
            all.Select(i => (double)Math.Min(i, 5000 - i)), all.Select(i => i % 2.0)];
        foreach (double[] layout in layouts.Select(l => l.ToArray()))
        {
            Assert.Equal(layout.Order().ElementAt(2500), Ascending.At([.. layout], 2500));
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(20)]
    [InlineData(33)]
    public void MediansOfColumnsAreThoseOfEachColumn(int rows)
    {
        var random = new RandomSource((ulong)rows);
        double[][] values = [.. Enumerable.Range(0, rows)
            .Select(_ => Enumerable.Range(0, 19).Select(_ => Math.Round(random.Normal(), 1)).ToArray())];
        double[] expected = [.. Enumerable.Range(0, 19).Select(f => values.Select(row => row[f]).Order().ToArray())
            .Select(c => (c[(rows - 1) / 2] + c[rows / 2]) / 2)];
        double[] medians = new RowMedians(rows).Of(j => values[j], 19);
        Assert.All(expected.Zip(medians), m => Assert.Equal(m.First, m.Second, 1e-15));
        Assert.Equal([.. Enumerable.Range(0, 19).Select(f => Sample.Median([.. values.Select(row => row[f])]))], medians);
    }

    [Fact]
    public void ExtremesAreFoundWhereverTheyStand()
    {
        for (int at = 0; at < 11; at++)
        {
            double[] values = [.. Enumerable.Range(0, 11).Select(i => i == at ? -7.0 : 1)];
            Assert.Equal(new Extremes(-7, 1), Extremes.Of(values));
            Assert.Equal(new Extremes(-1, 7), Extremes.Of([.. values.Select(v => -v)]));
        }

        Assert.Equal(new Extremes(double.PositiveInfinity, double.NegativeInfinity), Extremes.Of([]));
    }
}
