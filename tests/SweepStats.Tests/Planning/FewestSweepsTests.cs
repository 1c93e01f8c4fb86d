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
        var search = new FewestSweeps(PlanBasis.Stated(10, 10, null, 20), Confidence.NinetyFive, null);
        Assert.All(SweepsEach, each => Assert.Null(search.Placements(wanted, each)));
        Assert.Equal(0, search.Reckoned);
    }

    /// <summary>Only the numbers that come near it are reckoned, of some 60 that are tried.</summary>
    [Fact]
    public void OneThatIsReachedIsReckonedWhereItIsNear()
    {
        var search = new FewestSweeps(PlanBasis.Stated(0.3, 0.8, null, 20), Confidence.NinetyFive, null);
        int found = search.Placements(0.3, 1)!.Value.Numbers.Placements;
        Assert.InRange(found, 20, 80);
        Assert.InRange(search.Reckoned, 1, 10);
    }
}
