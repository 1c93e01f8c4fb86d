using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class PairScatterTests
{
    // Differences 1, 0, 2, 2: steps −1, 2, 0; (1 + 4 + 0)/(4·3) = 5/12.
    [Fact]
    public void FourValuesGiveWhatHandArithmeticGives() =>
    Agreement.Relative(1e-14, Math.Sqrt(5 / 12.0), PairScatter.Of([1, 2, 3, 4], [0, 2, 1, 2]));

    [Fact]
    public void DrawnSweepsAgreeWithR()
    {
        double[][] sweeps = [.. Fixtures.Numbers("oracles/wrong-sweeps-sweeps.csv").Take(9).Select(row => row[3..])];
        double[][] pairs = Fixtures.Numbers("oracles/wrong-sweeps-pairs.csv");
        Assert.Equal(36, pairs.Length);
        Assert.All(pairs, row =>
            Agreement.Relative(1e-11, row[2], PairScatter.Of(sweeps[(int)row[0]], sweeps[(int)row[1]]), row));
        Assert.All(pairs, row =>
            Agreement.Relative(1e-11, row[3], PairScatter.Middle(sweeps[(int)row[0]], sweeps[(int)row[1]]), row));
    }

    // Differences 1, 0, 2, 2: steps of 1, 2 and 0, and then of 97.
    [Fact]
    public void OneValueFarOffMovesTheMiddleByAPlaceAtMost()
    {
        Agreement.Relative(1e-12, 1 / (2 * 0.6744897501960817), PairScatter.Middle([1, 2, 3, 4], [0, 2, 1, 2]));
        Agreement.Relative(1e-12, 1.5 / (2 * 0.6744897501960817), PairScatter.Middle([1, 2, 3, 4, 99], [0, 2, 1, 2, 0]));
    }

    // Rows of odd and of even length; the limit next to the middle on either side.
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void BelowALimitTheMiddleIsTheSameAndAtItThereIsNone(int left)
    {
        double[][] sweeps = [.. Fixtures.Numbers("oracles/wrong-sweeps-sweeps.csv").Take(9).Select(row => row[3..^left])];
        foreach ((double[] a, double[] b) in sweeps.SelectMany((a, i) => sweeps[(i + 1)..].Select(b => (a, b))))
        {
            double middle = PairScatter.Middle(a, b);
            Assert.Null(PairScatter.MiddleBelow(a, b, middle));
            Assert.Equal(middle, PairScatter.MiddleBelow(a, b, Math.BitIncrement(middle)));
            Assert.Equal(middle, PairScatter.MiddleBelow(a, b, double.PositiveInfinity));
            Assert.Null(PairScatter.MiddleBelow(a, b, 0));
        }
    }

    [Fact]
    public void OffsetsAndTheOrderOfThePairChangeNothingAndTheScaleCarriesOver()
    {
        double[] a = [0.3, -1.2, 0.8, 2.1, -0.4], b = [1.1, 0.2, -0.9, 0.5, 0.7];
        double plain = PairScatter.Of(a, b);
        Agreement.Relative(1e-13, plain, PairScatter.Of(b, a));
        Agreement.Relative(1e-12, plain, PairScatter.Of([.. a.Select(v => v + 40)], b));
        Agreement.Relative(1e-13, 3 * plain, PairScatter.Of([.. a.Select(v => -3 * v)], [.. b.Select(v => -3 * v)]));
        double middle = PairScatter.Middle(a, b);
        Agreement.Relative(1e-13, middle, PairScatter.Middle(b, a));
        Agreement.Relative(1e-12, middle, PairScatter.Middle([.. a.Select(v => v + 40)], b));
        Agreement.Relative(1e-13, 3 * middle, PairScatter.Middle([.. a.Select(v => -3 * v)], [.. b.Select(v => -3 * v)]));
    }

    [Fact]
    public void NormalScatterIsFoundWhateverLiesSlowlyBetweenTheRows()
    {
        var random = new RandomSource(8);
        double[] Row(double bow) =>
            [.. Enumerable.Range(0, 4001).Select(f => (0.2 * random.Normal()) + (bow * Math.Sin(f / 400.0)))];
        // Half the relative deviation of 4000 squares that overlap, √(3/4000)/2 = 1.4 %; four of them are 0.011.
        Assert.InRange(PairScatter.Of(Row(0), Row(3)), 0.189, 0.211);
    }

    [Fact]
    public void RowsOfDifferentLengthsAreRefused() => Assert.Throws<ArgumentException>(() => PairScatter.Of([1, 2, 3], [1, 2]));
}
