using SweepStats.Alignment;
using Xunit;

namespace SweepStats.Tests.Alignment;

public sealed class SteppedReadingsTests
{
    [Fact]
    public void TheChancesAreThoseOfAnIntegralInR() =>
        Assert.All(Fixtures.Numbers("oracles/steps.csv"), row =>
        {
            Assert.Equal(row[2], SteppedReadings.TwoAgree(row[0], row[1]), 1e-10);
            Assert.Equal(row[3], SteppedReadings.InOneStep(row[0], row[1]), 1e-10);
        });

    [Fact]
    public void AStepOfTwoDeviationsHoldsTwoThirds() => Assert.Equal(0.6826894921, SteppedReadings.InOneStep(0.2, 0.1), 1e-9);

    [Fact]
    public void AFineStepHoldsWhatTheDensityGives()
    {
        // Two readings within q of each other: q times the density of their difference at 0, 1/(2s√π).
        Assert.Equal(1e-4 / (2 * Math.Sqrt(Math.PI)), SteppedReadings.TwoAgree(1e-4, 1), 1e-9);
        Assert.Equal(0, SteppedReadings.TwoAgree(0, 1));
        Assert.Equal(1, SteppedReadings.TwoAgree(1, 0));
    }

    [Theory]
    [InlineData(0.1, 0.03)]
    [InlineData(1, 2.5)]
    public void OnlyTheRatioOfStepAndScatterCounts(double step, double scatter)
    {
        Assert.Equal(SteppedReadings.TwoAgree(step, scatter), SteppedReadings.TwoAgree(7 * step, 7 * scatter), 1e-13);
        Assert.Equal(SteppedReadings.InOneStep(step, scatter), SteppedReadings.InOneStep(7 * step, 7 * scatter), 1e-13);
    }
}
