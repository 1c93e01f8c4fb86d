using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class PairProductsTests
{
    // Fewer rows than lanes, just as many, one more, and several times as many.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(25)]
    public void EachPairHasTheBitsOfItsOwnProduct(int count)
    {
        var random = new RandomSource((ulong)count);
        double[][] rows = [.. Enumerable.Range(0, count).Select(i => Enumerable.Range(0, 57).Select(_ => random.Normal() * Math.Pow(10, i - 4)).ToArray())];
        var products = new PairProducts(rows);
        for (int j = 0; j < count; j++)
        {
            Assert.Equal(Enumerable.Range(0, j).Select(i => Deviations.Product(rows[i], rows[j])), products.WithEarlier(j));
        }
    }
}
