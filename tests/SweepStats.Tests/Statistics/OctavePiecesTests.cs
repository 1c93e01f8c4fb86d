using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public class OctavePiecesTests
{
    private static readonly OctavePieces Logarithm = new(Math.Log, 1.0 / 16, 8, 5);

    // The runtime's logarithm is the reference; the bound is that of Chebyshev's interpolation, f⁽⁶⁾/6!·(h/2)⁶·2/2⁶ with h/x =
    // 1/32.
    [Fact]
    public void Logarithm_keeps_its_digits_over_all_octaves()
    {
        for (double x = 1.0 / 16; x < 16; x *= 1.0007)
        {
            Assert.True(Logarithm.TryAt(x, out double log));
            Assert.Equal(Math.Log(x), log, 5e-13);
        }
    }

    // Six nodes determine a polynomial of the fifth degree, so that nothing but rounding is left: at 3, 243 - 54 + 1 = 190.
    [Fact]
    public void Polynomial_of_the_fifth_degree_is_exact()
    {
        var pieces = new OctavePieces(x => (x * x * x * x * x) - (2 * x * x * x) + 1, 1, 2, 2);
        Assert.True(pieces.TryAt(3, out double value));
        Assert.Equal(190, value, 1e-11);
    }

    [Fact]
    public void Each_octave_begins_where_the_last_one_ends()
    {
        Assert.True(Logarithm.TryAt(Math.BitDecrement(2), out double below));
        Assert.True(Logarithm.TryAt(2, out double at));
        Assert.Equal(below, at, 1e-12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(0.0624999)]
    [InlineData(16)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(double.NaN)]
    public void Nothing_is_read_outside(double x) => Assert.False(Logarithm.TryAt(x, out _));

    // A law: tabulating c·f of x is c times the table of f.
    [Fact]
    public void Scale_of_the_curve_is_that_of_the_table()
    {
        var doubled = new OctavePieces(x => 2 * Math.Log(x), 1.0 / 16, 8, 5);
        Assert.True(doubled.TryAt(5.3, out double twice));
        Assert.True(Logarithm.TryAt(5.3, out double once));
        Assert.Equal(2 * once, twice, 1e-14);
    }
}
