using SweepStats.Alignment;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Alignment;

public sealed class DisplayStepTests
{
    [Theory]
    [InlineData(0.1, 0)]
    [InlineData(0.5, 0)]
    [InlineData(0.25, 0.137)]
    [InlineData(1, -0.4321)]
    public void StepsAreFoundAlsoWhereAnOffsetHasMovedThem(double step, double offset)
    {
        var random = new RandomSource(3);
        double[][] levels =
            [.. Enumerable.Range(0, 3)
                .Select(_ => Enumerable.Range(0, 201)
                    .Select(_ => (step * Math.Round(3 * random.Normal() / step)) - 100 + offset).ToArray())];
        Assert.Equal(step, DisplayStep.Of(Rehearsed.Floor(levels)), 1e-6);
        Assert.True(DisplayStep.Shows(Rehearsed.Floor(levels)));
    }

    [Fact]
    public void LevelsWithFullDigitsHaveNoStepHoweverOftenTheyAreCopied()
    {
        var random = new RandomSource(4);
        double[] sweep = [.. Enumerable.Range(0, 201).Select(_ => -100 + random.Normal())];
        foreach (double[][] copies in new double[][][] { [sweep], [sweep, sweep], [sweep, sweep, sweep, sweep, sweep] })
        {
            Assert.Equal(0, DisplayStep.Of(Rehearsed.Floor(copies)));
        }
    }

    [Fact]
    public void ALevelThatRepeatsAmongLevelsWithFullDigitsIsNoStep()
    {
        // 70 % cut off at one level: the rest lies anywhere.
        var random = new RandomSource(5);
        double[][] levels = [.. Enumerable.Range(0, 5)
            .Select(_ => Enumerable.Range(0, 201).Select(_ => Math.Max(-99.47113, -100 + random.Normal())).ToArray())];
        Assert.Equal(0, DisplayStep.Of(Rehearsed.Floor(levels)));
        Assert.False(DisplayStep.Shows(Rehearsed.Floor(levels)));
    }

    [Fact]
    public void TwoRangesOfOneDisplayShareNoStep()
    {
        // Steps of 0.1 dB, the upper half of the band moved by 0.03712 dB: the least distance is no step of the whole.
        double[] sweep = [.. Enumerable.Range(0, 200).Select(f => -100 + (0.1 * (f * 7 % 20)) + (f < 100 ? 0 : 0.03712))];
        Assert.Equal(0, DisplayStep.Of(Rehearsed.Floor(sweep, [.. sweep.Reverse()], sweep)));
    }

    [Fact]
    public void ALevelThatNeverChangesIsAllowedForButShowsNoStep()
    {
        double[] still = [.. Enumerable.Repeat(-140.0, 50)];
        Assert.Equal(1, DisplayStep.Of(Rehearsed.Floor(still, still)));
        Assert.False(DisplayStep.Shows(Rehearsed.Floor(still, still)));
        Assert.Null(DisplayStep.OfVarying([Rehearsed.Floor(still, still)]));
    }

    [Fact]
    public void TheCoarsestUsualStepIsNamed()
    {
        Assert.Equal(0.5, DisplayStep.Shared([-100, -99.5, -30]));
        Assert.Equal(0.01, DisplayStep.Shared([-100.37, -30]));
        Assert.Equal(0, DisplayStep.Shared([-100.12345]));
    }
}
