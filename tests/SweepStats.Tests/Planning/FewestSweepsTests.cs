using SweepStats.Planning;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Planning;

/// <summary>
/// How much a search reckons. It is counted, not timed: telling that a half-width is far off takes a tenth of reckoning it.
/// </summary>
public sealed class FewestSweepsTests
{
    private static readonly int[] SweepsEach = [1, 2, 3, 5, 10];

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.5)]
    public void AnUnreachableHalfWidthIsGivenUpWithoutReckoningAny(double wanted)
    {
        var search = new CountedSearch(PlanBasis.Stated(10, 10, null, 20));
        Assert.All(SweepsEach, each => Assert.Null(search.Fewest.Placements(wanted, each)));
        Assert.Equal(0, search.Reckoned);
    }

    /// <summary>Only the numbers that come near it are reckoned, of some 60 that are tried.</summary>
    [Fact]
    public void OneThatIsReachedIsReckonedWhereItIsNear()
    {
        var search = new CountedSearch(PlanBasis.Stated(0.3, 0.8, null, 20));
        int found = search.Fewest.Placements(0.3, 1)!.Value.Numbers.Placements;
        Assert.InRange(found, 20, 80);
        Assert.InRange(search.Reckoned, 1, 10);
    }

    /// <summary>From three placements up to 200, or to 2000 covered sweeps in all.</summary>
    [Theory]
    [InlineData(1, 200)]
    [InlineData(20, 100)]
    public void EveryNumberUpToTheMostIsTried(int sweepsEach, int most)
    {
        var tried = new List<int>();
        var search = new FewestSweeps(PlanBasis.Stated(0.3, 0.8, null, 20), Confidence.NinetyFive, null, numbers =>
        {
            tried.Add(numbers.Placements);
            return double.PositiveInfinity;
        });
        Assert.Null(search.Placements(1000, sweepsEach));
        Assert.Equal(Enumerable.Range(3, most - 2), tried);
    }

    private sealed class CountedSearch
    {
        public CountedSearch(PlanBasis basis) => Fewest = new FewestSweeps(basis, Confidence.NinetyFive, null, numbers =>
        {
            Reckoned++;
            return HalfWidthForecast.Db(basis, numbers, Confidence.NinetyFive);
        });

        public FewestSweeps Fewest { get; }

        public int Reckoned { get; private set; }
    }
}
