using SweepStats.Alignment;
using Xunit;

namespace SweepStats.Tests.Alignment;

public sealed class FlatRunTests
{
    [Fact]
    public void EachStretchIsARunHoweverShort() =>
        Assert.Equal([new(0, 1), new(2, 3), new FlatRun(6, 1)], FlatRun.Of([true, false, true, true, true, false, true]));
}
