using SweepStats.Planning;
using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Planning;

public sealed class HalfWidthForecastTests
{
    private static readonly PlanBasis Placed = PlanBasis.Stated(0, 1, null, 20);

    // t(0.975, 2) = 4.302653 (JCGM 100:2008, table G.2: 4.30); χ² of two degrees of freedom is exponential: its median 2·ln 2,
    // its 90 % point −2·ln 0.1.
    [Theory]
    [InlineData(0.5, 2.06818)]
    [InlineData(0.9, 3.76949)]
    public void ThreePlacementsGiveStudentsHalfWidthAtTheQuantileOfTheirVariance(double share, double expected) =>
        Assert.Equal(expected, HalfWidthForecast.Db(Placed, new SweepNumbers(3, 1, 5), Confidence.NinetyFive, share),
            expected * 0.01);

    [Fact]
    public void SweepsOfAPlacementAverageTheScatterOfSweepsAndNothingElse()
    {
        PlanBasis swept = PlanBasis.Stated(1, 0, null, 20) with { ReferenceDeviationDb = 0 };
        double one = HalfWidthForecast.Db(swept, new SweepNumbers(4, 1, 5), Confidence.NinetyFive);
        Assert.Equal(one / 2, HalfWidthForecast.Db(swept, new SweepNumbers(4, 4, 5), Confidence.NinetyFive), 1e-12);
        Assert.Equal(
            HalfWidthForecast.Db(Placed, new SweepNumbers(4, 1, 5), Confidence.NinetyFive),
            HalfWidthForecast.Db(Placed, new SweepNumbers(4, 9, 5), Confidence.NinetyFive),
            1e-12);
    }

    // 1.959964 times 0.5 dB for a normal error; of a rectangle 95 % of its half-width; with next to no scatter beside it.
    [Theory]
    [InlineData(ErrorDistribution.Normal, 0.97998)]
    [InlineData(ErrorDistribution.Rectangular, 0.95)]
    public void WhatRepeatsDoNotShowStaysHoweverManyThereAre(ErrorDistribution distribution, double expected)
    {
        var error = new SystematicError([new UncertaintyEntry { Name = "stated", HalfWidthDb = 1, Distribution = distribution }]);
        PlanBasis basis = PlanBasis.Stated(0.001, 0, null, 20) with { TypeB = error };
        Assert.Equal(expected, HalfWidthForecast.Db(basis, new SweepNumbers(100, 1, 100), Confidence.NinetyFive),
            2e-3 * expected);
    }

    [Fact]
    public void WithoutRepeatsThereIsNoInterval()
    {
        Assert.Equal(double.PositiveInfinity, HalfWidthForecast.Db(Placed, new SweepNumbers(1, 1, 5), Confidence.NinetyFive));
        Assert.Equal(double.PositiveInfinity, HalfWidthForecast.Db(Placed, new SweepNumbers(5, 1, 1), Confidence.NinetyFive));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void OneRepeatFewerThanTheFewestIsNotEnough(int each)
    {
        var search = new FewestSweeps(PlanBasis.Stated(0.5, 0.8, null, 20), Confidence.NinetyFive, null);
        ExpectedWidth found = search.Placements(0.6, each)!.Value;
        Assert.True(found.HalfWidthDb <= 0.6);
        Assert.True(search.Expect(found.Numbers.Placements - 1, each).HalfWidthDb > 0.6);
    }

    [Fact]
    public void WhatCannotBeHadIsNotPromised()
    {
        // Three reference sweeps of 1 dB give no less than 4.30/√3 · √ln 2 dB, whatever is taken behind.
        var search = new FewestSweeps(PlanBasis.Stated(1, 0.1, null, 20), Confidence.NinetyFive, referenceSweeps: 3);
        Assert.Null(search.Placements(1, 5));
        Assert.NotNull(search.Placements(2.5, 5));
    }

    [Fact]
    public void MoreSweepsThanNeededAreNotTriedFirst()
    {
        // Beside two reference sweeps 200 covered ones leave one degree of freedom; a handful does better.
        var search = new FewestSweeps(PlanBasis.Stated(0.5, null, null, 20), Confidence.NinetyFive, referenceSweeps: 2);
        ExpectedWidth few = search.Expect(1, 5);
        Assert.True(search.Expect(1, FewestSweeps.Most).HalfWidthDb > few.HalfWidthDb);
        Assert.True(search.Sweeps(few.HalfWidthDb)!.Value.Numbers.SweepsEach <= 5);
    }
}
