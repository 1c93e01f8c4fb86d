using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class RowProductTests
{
    // 2 + 0 + 3 − 4 + 15.
    [Fact]
    public void FiveNumbersGiveWhatHandArithmeticGives() => Assert.Equal(16, RowProduct.Of([1, 2, 3, 4, 5], [2, 0, 1, -1, 3]));

    [Fact]
    public void OfNothingItIsNothing() => Assert.Equal(0, RowProduct.Of([], []));

    // The last numbers of a row that is no whole number of fours count as the others do.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(1601)]
    public void RowsOfAnyLengthGiveTheCompensatedSum(int length)
    {
        var random = new RandomSource((ulong)length);
        double[] a = [.. Enumerable.Range(0, length).Select(_ => 3 + random.Normal())];
        double[] b = [.. Enumerable.Range(0, length).Select(_ => 5 + random.Normal())];
        Agreement.Relative(1e-13, Deviations.Product(a, b), RowProduct.Of(a, b));
        Agreement.Relative(1e-13, -2 * RowProduct.Of(a, b), RowProduct.Of([.. a.Select(v => -2 * v)], b));
        Agreement.Relative(1e-13, RowProduct.Of(a, b), RowProduct.Of([.. b.Reverse()], [.. a.Reverse()]));
    }

    [Fact]
    public void ALongerSecondRowCountsAsFarAsTheFirstReaches() => Assert.Equal(11, RowProduct.Of([1, 2], [3, 4, 100]));

    [Fact]
    public void AShorterSecondRowIsRefused() =>
    Assert.Throws<ArgumentOutOfRangeException>(() => RowProduct.Of([1, 2, 3], [1, 2]));
}
