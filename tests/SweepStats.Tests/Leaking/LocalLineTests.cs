using SweepStats.Leakage;
using Xunit;

namespace SweepStats.Tests.Leaking;

public sealed class LocalLineTests
{
    // Two straight lines that meet at place 50: five neighbours to a side see the other line from place 46 to 54 only.
    [Fact]
    public void OnAStraightStretchNothingLiesOffTheLineThroughTheNeighbours()
    {
        double[] bent = [.. Enumerable.Range(0, 101).Select(f => Math.Abs(f - 50.0))];
        double[] away = LocalLine.Residuals(bent, 5);
        Assert.Equal(Enumerable.Range(0, 101).Where(f => f is < 46 or > 54),
            Enumerable.Range(0, 101).Where(f => Math.Abs(away[f]) < 1e-9));
    }
}
