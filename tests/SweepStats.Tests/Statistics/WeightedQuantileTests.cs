using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class WeightedQuantileTests
{
    private static readonly double[] Values = [30, 10, 20, 40];
    private static readonly double[] Weights = [1, 2, 3, 4];

    [Theory]
    // Sorted 10, 20, 30, 40 with weights 2, 3, 1, 4: sums 2, 5, 6, 10 of 10.
    [InlineData(0, 10)]
    [InlineData(0.2, 10)]
    [InlineData(0.21, 20)]
    [InlineData(0.5, 20)]
    [InlineData(0.51, 30)]
    [InlineData(0.6, 30)]
    [InlineData(0.61, 40)]
    [InlineData(1, 40)]
    public void TheFirstValueThatReachesTheShareIsTaken(double share, double expected)
    {
        Assert.Equal(expected, WeightedQuantile.Of(Values, Weights, share));
    }

    [Fact]
    public void AValueOfWeightThreeIsAsGoodAsThreeValues()
    {
        double[] repeated = [30, 10, 10, 20, 20, 20, 40, 40, 40, 40];
        double[] ones = [.. repeated.Select(_ => 0.1)];
        for (double share = 0.05; share < 1; share += 0.1)
        {
            Assert.Equal(WeightedQuantile.Of(repeated, ones, share), WeightedQuantile.Of(Values, Weights, share));
        }
    }

    [Fact]
    public void ShiftScaleAndOrderCarryThrough()
    {
        foreach (double share in (double[])[0.1, 0.5, 0.95])
        {
            double plain = WeightedQuantile.Of(Values, Weights, share);
            Assert.Equal((2 * plain) - 90, WeightedQuantile.Of([.. Values.Select(v => (2 * v) - 90)], Weights, share));
            Assert.Equal(plain, WeightedQuantile.Of(Values, [.. Weights.Select(w => w / 7)], share));
            Assert.Equal(plain, WeightedQuantile.Of([.. Values.Reverse()], [.. Weights.Reverse()], share));
        }
    }

    [Theory]
    [InlineData(7)]
    [InlineData(1000)]
    public void OfManyItIsTheOneThatReachesTheShareInOrder(int count)
    {
        // 1 to n, each as heavy as itself, in scattered order: sums k(k+1)/2 of n(n+1)/2. Halves of them are tied with the next.
        double[] weights = [.. Enumerable.Range(0, count).Select(i => 1 + (i * 389.0 % count))];
        double[] values = [.. weights.Select(w => Math.Ceiling(w / 2))];
        foreach (double share in (double[])[0, 0.1, 0.5, 0.9, 1])
        {
            int expected = Enumerable.Range(1, count).First(k => k * (k + 1) >= share * count * (count + 1) * (1 - 1e-12));
            Assert.Equal(Math.Ceiling(expected / 2.0), WeightedQuantile.Of(values, weights, share));
        }
    }

    [Fact]
    public void AValueOfNoWeightIsNeverTaken()
    {
        Assert.Equal(10, WeightedQuantile.Of([5, 10, 50], [0, 1, 0], 0));
        Assert.Equal(10, WeightedQuantile.Of([5, 10, 50], [0, 1, 0], 1));
    }

    [Fact]
    public void MissingWeightsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => WeightedQuantile.Of([1, 2], [1], 0.5));
        Assert.Throws<ArgumentException>(() => WeightedQuantile.Of([], [], 0.5));
    }
}
