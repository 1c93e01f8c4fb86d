using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CrossProductsTests
{
    [Fact]
    public void SumsAreThoseOfHandArithmetic()
    {
        // Rows (1, 3), (2, −1), (0, 5).
        var sums = new CrossProducts(3);
        Assert.Equal([0, 0, 0, 0, 0, 0], sums.Pairs());
        sums.Add([1, 2, 0]);
        sums.Add([3, -1, 5]);
        Assert.Equal([10, -1, 5, 15, -5, 25], sums.Pairs());
        Assert.Equal(-5, sums.Pairs()[CrossProducts.Place(2, 1)]);
    }

    // Fewer rows than lanes, just as many, one more, and several times as many.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(25)]
    public void EachPairHasTheBitsOfItsOwnSum(int count)
    {
        var random = new RandomSource((ulong)count);
        double[][] columns = [.. Enumerable.Range(0, 57)
            .Select(_ => Enumerable.Range(0, count).Select(i => random.Normal() * Math.Pow(10, i - 4)).ToArray())];
        var sums = new CrossProducts(count);
        Array.ForEach(columns, column => sums.Add(column));
        for (int i = 0; i < count; i++)
        {
            Assert.All(Enumerable.Range(0, i + 1),
                j => Assert.Equal(columns.Sum(c => c[i] * c[j]), sums.Pairs()[CrossProducts.Place(i, j)]));
        }
    }
}
