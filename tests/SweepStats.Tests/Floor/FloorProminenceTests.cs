using SweepStats.Floor;
using Xunit;

namespace SweepStats.Tests.Floor;

public sealed class FloorProminenceTests
{
    // 200 frequencies without any unevenness, then 201 that go up and down by up to a decibel: a hundred to either side count.
    [Fact]
    public void UnevennessIsThatOfTheFrequenciesRoundAbout()
    {
        double[] level = [.. Enumerable.Range(0, 401).Select(f => f < 200 ? 0 : (f * 37 % 11 / 5.0) - 1)];
        var beside = new FloorProminence(level, new bool[401], 0.1);
        Assert.Equal(0, beside.SpreadDb(90), 1e-9);
        Assert.True(beside.SpreadDb(310) > 0.3);
    }
}
