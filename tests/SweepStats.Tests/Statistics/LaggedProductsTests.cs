using System.Numerics;
using System.Runtime.Intrinsics;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class LaggedProductsTests
{
    [Fact]
    public void ProductsAreThoseOfHandArithmetic()
    {
        // (1, 2, 3): 1 + 4 + 9, 2 + 6, 3; (−1, 4, 0): 1 + 16, −4, 0.
        AssertNear([31, 4, 3], LaggedProducts.Of([[1, 2, 3], [-1, 4, 0]]));
        AssertNear([49], LaggedProducts.Of([[-7]]));
    }

    [Theory]
    [InlineData(1, 64)]
    [InlineData(3, 65)]
    [InlineData(20, 401)]
    public void AnyDistanceHasItsOwnSum(int count, int columns)
    {
        var random = new RandomSource((ulong)columns);
        double[][] rows = [.. Enumerable.Range(0, count)
            .Select(j => Enumerable.Range(0, columns).Select(f => Math.Sin(f / (j + 3.0)) + random.Normal()).ToArray())];
        AssertNear([.. Enumerable.Range(0, columns).Select(l => rows.Sum(row => row.Skip(l).Zip(row, (x, y) => x * y).Sum()))],
            LaggedProducts.Of(rows));
    }

    [Fact]
    public void TheTransformOfFourNumbersIsThatOfHandArithmetic()
    {
        // 1, 2, 3, 5 on the left: 11, −2 + 3i, −3, −2 − 3i; i, 0, 0, 0 on the right: i everywhere.
        Vector128<double>[] real = [.. new double[] { 1, 2, 3, 5 }.Select(x => Vector128.Create(x, 0))];
        Vector128<double>[] imaginary = [Vector128.Create(0, 1.0), default, default, default];
        new FourierTransform(4).Apply(real, imaginary);
        AssertNear([11, -2, -3, -2], [.. real.Select(x => x[0])]);
        AssertNear([0, 3, 0, -3], [.. imaginary.Select(x => x[0])]);
        AssertNear([0, 0, 0, 0], [.. real.Select(x => x[1])]);
        AssertNear([1, 1, 1, 1], [.. imaginary.Select(x => x[1])]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(32)]
    public void TheTransformIsTheSumThatDefinesIt(int count)
    {
        var random = new RandomSource(9);
        Complex[] values = [.. Enumerable.Range(0, count).Select(_ => new Complex(random.Normal(), random.Normal()))];
        Vector128<double>[] real = [.. values.Select(z => Vector128.Create(-z.Real, z.Real))],
            imaginary = [.. values.Select(z => Vector128.Create(-z.Imaginary, z.Imaginary))];
        new FourierTransform(count).Apply(real, imaginary);
        for (int k = 0; k < count; k++)
        {
            Complex expected = Enumerable.Range(0, count)
                .Aggregate(Complex.Zero,
                (sum, f) => sum + (values[f] * Complex.FromPolarCoordinates(1, -2 * Math.PI * f * k / count)));
            Assert.Equal(expected.Real, real[k][1], 1e-13 * count);
            Assert.Equal(expected.Imaginary, imaginary[k][1], 1e-13 * count);
            Assert.Equal(-real[k][1], real[k][0]);
        }
    }

    // Transformed twice, a series is n times itself backwards from its second number on.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(64)]
    public void ThereAndBackInReversedOrderASeriesIsItselfBackwards(int count)
    {
        var random = new RandomSource(10);
        Vector128<double>[] real =
            [.. Enumerable.Range(0, count).Select(_ => Vector128.Create(random.Normal(), random.Normal()))];
        Vector128<double>[] imaginary = new Vector128<double>[count], usual = [.. real], usualImaginary = [.. imaginary],
            before = [.. real];
        var transform = new FourierTransform(count);
        transform.ToReversed(real, imaginary);
        transform.Apply(usual, usualImaginary);
        Assert.Equal(usual.Select(x => Math.Round(x[1], 9)).Order(), real.Select(x => Math.Round(x[1], 9)).Order());
        transform.FromReversed(real, imaginary);
        for (int f = 0; f < count; f++)
        {
            Vector128<double> back = before[(count - f) % count] * count;
            Assert.Equal(back[0], real[f][0], 1e-12 * count);
            Assert.Equal(back[1], real[f][1], 1e-12 * count);
            Assert.Equal(0, imaginary[f][0], 1e-12 * count);
        }
    }

    private static void AssertNear(double[] expected, double[] found) =>
        Assert.All(expected.Zip(found), p => Assert.Equal(p.First, p.Second, 1e-14 * Math.Max(1, expected[0])));
}
