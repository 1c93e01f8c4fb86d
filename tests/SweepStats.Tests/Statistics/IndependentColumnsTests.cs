using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class IndependentColumnsTests
{
    [Fact]
    public void ColumnsThatScatterEachForItselfCountEach()
    {
        double[] found =
            IndependentColumns.Of([.. Enumerable.Range(1, 12).Select(seed => SuccessionTestTests.Rows(6, 120, seed))]);
        Assert.InRange(found.Average(), 95, 121);
    }

    [Fact]
    public void OneColumnAndOneSharedLevelCountOnce()
    {
        Assert.Equal([1.0], IndependentColumns.Of([SuccessionTestTests.Rows(5, 1, 1)]));
        Assert.Equal(1, Of(5, 60, (random, _) => Enumerable.Repeat(random.Normal(), 60)), 1e-12);
    }

    [Fact]
    public void APatternThatIsTheSameInEveryRowCountsOnceThoughItRipples() =>
        Assert.Equal(1, Of(6, 80, (random, _) => random.Normal() is var size ? Enumerable.Range(0, 80)
            .Select(f => size * Math.Sin(f / 3.0)) : []), 0.2);

    [Fact]
    public void AWaveOfAnyPhaseCountsAboutTwice()
    {
        double found = Enumerable.Range(0, 20)
            .Average(i => Of(6, 90, (random, _) => random.Normal() is var a && random.Normal() is var b ? Enumerable.Range(0, 90)
            .Select(f => (a * Math.Sin(f / 3.0)) + (b * Math.Cos(f / 3.0))) : [], i));
        Assert.InRange(found, 1, 2);
    }

    [Fact]
    public void AFewColumnsThatScatterMostCountMost() =>
        // 6 of 120 columns hold nearly all of the scatter.
        Assert.InRange(Of(8, 120, (random, _) => Enumerable.Range(0, 120)
            .Select(f => random.Normal() * (f is > 50 and < 57 ? 10 : 0.1))), 1, 9);

    private static double Of(int count, int columns, Func<RandomSource, int, IEnumerable<double>> row, int seed = 0)
    {
        var random = new RandomSource(77 + (ulong)seed);
        double[][] rows = [.. Enumerable.Range(0, count).Select(j => row(random, j).ToArray())];
        Assert.All(rows, r => Assert.Equal(columns, r.Length));
        return IndependentColumns.Of([new SerialRows(rows)])[0];
    }
}
