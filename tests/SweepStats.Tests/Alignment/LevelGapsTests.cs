using SweepStats.Alignment;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Alignment;

public sealed class LevelGapsTests
{
    [Fact]
    public void LevelsThatRepeatLieTheseDistancesApart()
    {
        Assert.Equal([1, 0.5], LevelGaps.Of([-1, 0.5, -1, 0, 0.5, 0], 0.5));
        Assert.Equal([1, 0.5], LevelGaps.Of([-1, 0.5, -1, 0, 0.5, 0], 0));
        Assert.Empty(LevelGaps.Of([-1, 0.5, -1, 0, 0.25], 0.25));
        Assert.Empty(LevelGaps.Of([-1, -1, -1 + 1e-7], 0));
    }

    [Theory]
    [InlineData(0.001)]
    [InlineData(0.02)]
    [InlineData(0.1)]
    [InlineData(0.25)]
    [InlineData(1)]
    public void PlacesSayTheSameAsTheOrder(double step)
    {
        var random = new RandomSource(5);
        double[] written = [.. Enumerable.Range(0, 400).Select(_ => (Math.Round(5 * random.Normal()) - 400) / Math.Round(1 / step))];
        double[] beside = [.. written.Select(level => level + 1e-9)];
        Assert.NotEmpty(LevelGaps.Of([.. written], step));
        Assert.Equal(LevelGaps.Of([.. written], 0), LevelGaps.Of([.. written], step));
        Assert.Equal(LevelGaps.Of([.. beside], 0), LevelGaps.Of([.. beside], step));
        Assert.Equal(LevelGaps.Of([.. written, .. beside], 0), LevelGaps.Of([.. written, .. beside], step));
    }

    [Fact]
    public void OnlyStepsThatEveryLevelFitsInAreUsual()
    {
        Assert.Equal(0.5, UsualSteps.Of([-100, -99.5, -30]).Coarsest);
        Assert.Equal(0.05, UsualSteps.Of([-100.25, -99.5, -30]).And(UsualSteps.Of([0.1, 0.2])).Coarsest);
        Assert.Equal(0, UsualSteps.Of([1, 2, 3, 4, 0.12345]).Coarsest);
        Assert.Equal(0, UsualSteps.Of([0.12345, 1, 2, 3, 4]).Coarsest);
        Assert.Equal(UsualSteps.All, UsualSteps.Of([]));
    }
}
