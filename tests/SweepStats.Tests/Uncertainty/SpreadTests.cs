using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Uncertainty;

public sealed class SpreadTests
{
    public static TheoryData<Spread, double> Divisors => new()
    {
        // CISPR 16-4-2 and JCGM 100:2008, 4.3: √3, √6, √2; trapezoid a√((1 + β²)/6); inexact limits √(a²/3 + d²/9).
        { new RectangularSpread(1), 1 / Math.Sqrt(3) }, { new TrapezoidalSpread(1, 0), 1 / Math.Sqrt(6) },
        { new ArcsineSpread(1), 1 / Math.Sqrt(2) }, { new NormalSpread(0.5), 0.5 },
        { new TrapezoidalSpread(1, 0.5), Math.Sqrt(1.25 / 6) },
        { new RectangularSpread(1, 0.5), Math.Sqrt((1 / 3.0) + (0.25 / 9)) }, { new TrapezoidalSpread(2, 2), 2 / Math.Sqrt(3) },
        { new StudentSpread(0.3, 1e9), 0.3 },
    };

    [Theory]
    [MemberData(nameof(Divisors))]
    public void DrawsHaveTheStatedUncertaintyAndFollowTheStatedProbabilities(Spread spread, double uncertainty)
    {
        ArgumentNullException.ThrowIfNull(spread);
        Assert.Equal(uncertainty, spread.StandardUncertainty, 1e-12);
        var random = new RandomSource(5);
        double[] drawn = [.. Enumerable.Range(0, 40_000).Select(_ => spread.Draw(random))];
        Assert.Equal(uncertainty, Sample.StandardDeviation(drawn), 0.015 * uncertainty);
        Assert.Equal(0, Sample.Mean(drawn), 4 * uncertainty / 200);
        foreach (double at in new[] { -1.4, -0.9, -0.3, 0, 0.2, 0.7, 1.1, 1.5 })
        {
            double share = drawn.Count(d => d < at * uncertainty) / 40_000.0;
            // 4 binomial deviations at most 0.01.
            Assert.Equal(spread.Below(at * uncertainty), share, 0.01);
            Assert.Equal(1, spread.Below(at * uncertainty) + spread.Below(-at * uncertainty), 1e-9);
        }

        if (double.IsFinite(spread.Limit))
        {
            Assert.All(drawn, d => Assert.InRange(d, -spread.Limit, spread.Limit));
            Assert.Equal(1, spread.Below(spread.Limit), 1e-12);
            Assert.Equal(0, spread.Below(-spread.Limit), 1e-12);
        }
    }

    [Fact]
    public void WidthsThatAreNoneAreRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new RectangularSpread(-1));
        Assert.Throws<ArgumentOutOfRangeException>(() => new RectangularSpread(1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => new TrapezoidalSpread(1, 2));
        Assert.Throws<ArgumentOutOfRangeException>(() => new NormalSpread(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => new StudentSpread(1, 0));
    }
}
