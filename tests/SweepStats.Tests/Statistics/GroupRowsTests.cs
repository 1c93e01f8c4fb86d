using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class GroupRowsTests
{
    [Fact]
    public void EachGroupKeepsItsOrder() =>
        Assert.Equal([["b", "e"], ["a", "d"], ["c"]], GroupRows.Of<string>(["a", "b", "c", "d", "e"], [1, 0, 2, 1, 0]));
}
