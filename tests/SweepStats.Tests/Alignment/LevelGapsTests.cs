using SweepStats.Alignment;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Alignment;

public sealed class LevelGapsTests
{
    [Fact]
    public void LevelsThatRepeatLieTheseDistancesApart()
    {
        Assert.Equal([1, 0.5], LevelGaps.Of([-1, 0.5, -1, 0, 0.5, 0]));
        Assert.Empty(LevelGaps.Of([-1, 0.5, -1, 0, 0.25]));
        Assert.Empty(LevelGaps.Of([-1, -1, -1 + 1e-7]));
    }

    // Multiples of the step, with neighbours and without; moved off the usual steps, which a finer one of them shows.
    [Theory]
    [InlineData(0.001, 1, 0)]
    [InlineData(0.02, 1, 0)]
    [InlineData(0.25, 1, 0)]
    [InlineData(0.5, 3, 0)]
    [InlineData(0.1, 1, 0.003)]
    [InlineData(0.05, 7, 0.002)]
    public void TheStepIsTheLeastDistanceOrTheUsualOneWhicheverIsCoarser(double step, int every, double offset)
    {
        var random = new RandomSource(5);
        double[] row =
            [.. Enumerable.Range(0, 400).Select(_ => (every * step * (Math.Round(5 * random.Normal()) - 40)) + offset)];
        double usual = UsualSteps.Of(row).Coarsest, least = LevelGaps.Of([.. row]).Min();
        Assert.Equal(Math.Max(usual, least), DisplayStep.Found(Rehearsed.Floor(row)), 1e-12);
        Assert.Equal(every * step, Math.Max(usual, least), 1e-12);
    }

    [Fact]
    public void OnlyStepsThatEveryLevelFitsInAreUsual()
    {
        Assert.Equal(0.5, UsualSteps.Of([-100, -99.5, -30]).Coarsest);
        Assert.Equal(0.05, UsualSteps.Of([-100.25, -99.5, -30]).And(UsualSteps.Of([0.1, 0.2])).Coarsest);
        Assert.Equal(0, UsualSteps.Of([1, 2, 3, 4, 0.12345]).Coarsest);
        Assert.Equal(0, UsualSteps.Of([0.12345, 1, 2, 3, 4]).Coarsest);
        // 0.3 and 0.75 are whole in 0.05, 0.01, 0.005, 0.002 and 0.001; not in 0.02, though 0.002 is.
        Assert.Equal(new UsualSteps(0b11110100000), UsualSteps.Of([0.3, 0.75]));
        Assert.Equal(UsualSteps.All, UsualSteps.Of([]));
    }
}
