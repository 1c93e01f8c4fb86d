using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class SideBySideTests
{
    [Theory]
    [InlineData(-1)]
    [InlineData(1)]
    [InlineData(7)]
    public void EachResultStandsInItsPlace(int threads)
    {
        Assert.Equal(Enumerable.Range(0, 50).Select(i => i * i), SideBySide.Of(50, threads, i => i * i));
        Assert.Empty(SideBySide.Of(0, threads, i => i));
    }
}
