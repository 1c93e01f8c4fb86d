using SweepStats.Clipping;
using Xunit;

namespace SweepStats.Tests.Clipping;

public sealed class TiedTopsTests
{
    // Two readings 1 dB apart lie 0.5 dB off their mean: 0.5/0.6745·√(2/1).
    [Fact]
    public void RepeatsScatterAsWorkedByHand() => Assert.Equal(
        1.048342, TiedTops.Scatter(Rehearsed.Floor([-60, -50, -40, -30], [-61, -49, -41, -29])), 1e-6);

    // Up and down by 1 dB: each reading lies 1 dB off the middle of its neighbours, 1/0.6745/√1.5.
    [Fact]
    public void OneSweepScattersAboutItsNeighbours() =>
        Assert.Equal(1.210521, TiedTops.Scatter(Rehearsed.Floor([-60, -61, -60, -61, -60])), 1e-5);
}
