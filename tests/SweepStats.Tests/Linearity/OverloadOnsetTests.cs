using SweepStats.Linearity;
using Xunit;

namespace SweepStats.Tests.Linearity;

public sealed class OverloadOnsetTests
{
    // A step of 10 dB: at rising levels it shows 10, 10.1, 9.9, 9.6 and 9.2 dB of it. Short by 0, −0.1, 0.1, 0.4, 0.8.
    private static readonly SourceLevel Low = Level(0, -60, -55, -50, -45, -40);
    private static readonly SourceLevel High = Level(10, -50, -44.9, -40.1, -35.4, -30.8);
    private static readonly int[] Rising = [0, 1, 2, 3, 4];

    [Fact]
    public void TheLevelIsThatOfTheFirstFrequencyThatFallsShort()
    {
        // Pooled to −0.05, −0.05, 0.1, 0.4, 0.8.
        Assert.Equal(-35.4, OverloadOnset.Of(Low, High, Rising, 0.2), 12);
        Assert.Equal(-40.1, OverloadOnset.Of(Low, High, Rising, 0.05), 12);
        Assert.Equal(-30.8, OverloadOnset.Of(Low, High, Rising, 0.5), 12);
    }

    [Fact]
    public void WhereTheLowestFallsShortNoLevelIsFreeOfIt() =>
        Assert.Equal(double.NegativeInfinity, OverloadOnset.Of(Low, Level(10, -50.5, -45.5, -40.5, -35.8, -31), Rising, 0.2));

    [Fact]
    public void WhereNoneDoesNoLevelIsReached() => Assert.Equal(double.PositiveInfinity, OverloadOnset.Of(Low, High, Rising, 1));

    private static SourceLevel Level(double dbm, params double[] levels) => new(dbm, [levels], IsReference: false);
}
