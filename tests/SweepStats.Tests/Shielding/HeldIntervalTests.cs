using System.Collections.Immutable;
using SweepStats.Floor;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Shielding;

/// <summary>Limits of the shielding where one of several looks is kept.</summary>
public sealed class HeldIntervalTests
{
    private static readonly CoveredReadings Five = new(5, 5, 0);

    [Fact]
    public void WithoutErrorsTheEndsAreThoseByHand()
    {
        // Floor −100 dB in the mean amplitude. Reference −40 dB: 60 dB over it, 1/1000 of its amplitude; covered −94 dB: the
        // noise is half of its amplitude.
        HeldNoise noise = HeldNoise.Highest(1);
        EnvelopeLimits limits = Limits(noise, Levels(-40, -94, -100 - noise.LeastRiseDb, 0));
        double half = 20 * Math.Log10(Math.Pow(10, -94 / 20.0) - Math.Pow(10, -100 / 20.0));
        Assert.Equal(-40 + (20 * Math.Log10(0.999)) + 94, limits.LowDb, 1e-9);
        Assert.Equal(-40 - half, limits.HighDb, 1e-9);
        Assert.Equal((limits.LowDb + limits.HighDb) / 2, limits.SeDb, 1e-9);
    }

    [Fact]
    public void TheLowestMayHideASignalAsLargeAsTheNoiseOfAThousandLooks()
    {
        HeldNoise noise = HeldNoise.Lowest(new DetectorNoise(1).LogStandardDeviation);
        EnvelopeLimits limits = Limits(noise, Levels(-30, -125, -130, 0));
        // 30 dB to the noise power, 2.507 dB from log mean to power, 8.712 dB to its largest amplitude
        // (fixtures/oracles/held.csv).
        double hidden = -130 + 30 + 2.5068157813485197 + 8.7122223547012894;
        Assert.Equal(-30 - (20 * Math.Log10(Math.Pow(10, -125 / 20.0) + Math.Pow(10, hidden / 20))), limits.LowDb, 1e-3);
        Assert.True(limits.HighDb > 95);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void FarAboveTheFloorItIsWelchsInterval(bool highest)
    {
        HeldNoise noise = highest ? HeldNoise.Highest(1) : HeldNoise.Lowest(5.5);
        ReadingLevels levels = Levels(-30, -70, -300, 0.2);
        EnvelopeLimits held = Limits(noise, levels);
        ShieldingLimits welch = new ShieldingInterval(new DetectorNoise(20), Confidence.NinetyFive, Five).For(levels);
        Assert.Equal(welch.LowDb, held.LowDb, 1e-6);
        Assert.Equal(welch.HighDb, held.HighDb, 1e-6);
        Assert.Equal(welch.StandardUncertaintyDb, held.StandardUncertaintyDb, 1e-6);
    }

    [Fact]
    public void ACoveredLevelInTheNoiseIsABoundThatTakesNoNoiseOut()
    {
        HeldNoise noise = HeldNoise.Highest(1);
        EnvelopeLimits limits = Limits(noise, Levels(-30, -99.9, -100, 0.3));
        Assert.True(limits.Capped);
        Assert.InRange(limits.LowDb, 68, 69.9);
    }

    [Theory]
    [InlineData(-90)]
    [InlineData(-97)]
    public void MovingAllLevelsTogetherMovesNothing(double covered)
    {
        foreach (HeldNoise noise in new[] { HeldNoise.Highest(1.5), HeldNoise.Lowest(5) })
        {
            EnvelopeLimits at = Limits(noise, Levels(-30, covered, -100, 0.3)), moved = Limits(noise, Levels(-13, covered
                + 17, -83, 0.3));
            Assert.Equal(at.LowDb, moved.LowDb, 1e-9);
            Assert.Equal(at.HighDb, moved.HighDb, 1e-9);
            Assert.Equal(at.StandardUncertaintyDb, moved.StandardUncertaintyDb, 1e-6);
        }
    }

    [Fact]
    public void MoreErrorAndMoreConfidenceOnlyWiden()
    {
        HeldNoise noise = HeldNoise.Highest(1.5);
        EnvelopeLimits some = Limits(noise, Levels(-30, -80, -100, 0.2)), more = Limits(noise, Levels(-30, -80, -100, 0.4));
        EnvelopeLimits surer = Limits(noise, Levels(-30, -80, -100, 0.2), 0.99);
        Assert.True(more.LowDb < some.LowDb && more.HighDb > some.HighDb);
        Assert.True(surer.LowDb < some.LowDb && surer.HighDb > some.HighDb);
        ImmutableArray<ReadingEstimator> estimators = ReadingEstimator.All([noise], 0, Confidence.NinetyFive, Five);
        EnvelopeLimits repeated = EnvelopeLimits.Of(Levels(-30, -80, -100, 0.2), estimators, floorKnown: true, repeated: true);
        Assert.InRange(repeated.OneSidedLowDb, repeated.LowDb, repeated.SeDb);
    }

    [Fact]
    public void AReferenceInTheNoiseBoundsNothing() =>
        Assert.Equal(double.NegativeInfinity, Limits(HeldNoise.Highest(1), Levels(-100, -101, -100, 0.3)).LowDb);

    private static EnvelopeLimits Limits(HeldNoise noise, ReadingLevels levels, double confidence = 0.95) =>
        EnvelopeLimits.Of(levels, ReadingEstimator.All([noise], 0, new Confidence(confidence), Five), floorKnown: true,
            repeated: false);

    private static ReadingLevels Levels(double reference, double covered, double floor, double error) => new(
        new RepeatedLevel(reference, new Contribution(error, 4)), new RepeatedLevel(covered, new Contribution(error, 4)),
        new RepeatedLevel(floor, new Contribution(error / 3, 100)), SystematicError.None);
}
