using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Floor;

/// <summary>What must hold of the noise curve whatever its values, and what simulation shows of it.</summary>
public sealed class DetectorNoiseTestsOfLaws
{
    public static TheoryData<double> Looks => [0.5, 1, 1.5, 4, 30, 1000, double.PositiveInfinity];

    [Theory]
    [MemberData(nameof(Looks))]
    public void MonotoneRise(double looks)
    {
        var noise = new DetectorNoise(looks);
        double last = 0;
        Assert.Equal(0, noise.Rise(0), 1e-13);
        for (double level = -60; level < 110; level += 0.25)
        {
            double rise = noise.Rise(Math.Pow(10, level / 10));
            Assert.True(rise > last, $"{looks} looks at {level} dB");
            last = rise;
        }
    }

    [Theory]
    [MemberData(nameof(Looks))]
    public void TheSignalRisesWithTheReading(double looks)
    {
        var noise = new DetectorNoise(looks);
        double last = double.NegativeInfinity;
        for (double rise = 1e-5; rise < 120; rise = (rise * 1.05) + 1e-5)
        {
            double level = noise.SnrInDecibels(rise);
            Assert.True(level > last, $"{looks} looks at a rise of {rise} dB");
            last = level;
        }
    }

    [Theory]
    [MemberData(nameof(Looks))]
    public void TheTableAgreesWithTheExactInverse(double looks)
    {
        var noise = new DetectorNoise(looks);
        for (double rise = 1e-5; rise < 120; rise *= 1.03)
        {
            Agreement.Within(1e-9, noise.ExactSnrInDecibels(rise), noise.SnrInDecibels(rise), looks, rise);
        }
    }

    [Theory]
    [MemberData(nameof(Looks))]
    public void InverseAndRiseUndoEachOther(double looks)
    {
        var noise = new DetectorNoise(looks);
        for (double level = -40; level <= 100; level += 3.7)
        {
            Agreement.Within(2e-9, level, noise.SnrInDecibels(noise.Rise(Math.Pow(10, level / 10))), looks, level);
        }
    }

    [Theory]
    [MemberData(nameof(Looks))]
    public void NoRiseIsNoSignal(double looks)
    {
        var noise = new DetectorNoise(looks);
        Assert.Equal(double.NegativeInfinity, noise.SnrInDecibels(0));
        Assert.Equal(double.NegativeInfinity, noise.SnrInDecibels(-3));
        Assert.Equal(double.NegativeInfinity, noise.ExactSnrInDecibels(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => noise.Rise(-1e-9));
        Assert.Throws<ArgumentOutOfRangeException>(() => noise.Rise(double.NaN));
    }

    [Theory]
    [MemberData(nameof(Looks))]
    public void AStrongSignalStandsAboveTheNoiseByItsRatioLessTheOffset(double looks)
    {
        // Far above the floor the reading is the signal: rise + offset = level. Across 80 dB, where the formula changes, without
        // a step.
        var noise = new DetectorNoise(looks);
        foreach (double level in (double[])[79.999999, 80.000001, 130])
        {
            Agreement.Within(1e-6, level, noise.Rise(Math.Pow(10, level / 10)) + noise.LogMeanOffset, looks, level);
        }
    }

    [Fact]
    public void NoiseWithoutScatterIsTheLimitOfManyLooks()
    {
        var many = new DetectorNoise(1e6);
        var endless = new DetectorNoise(double.PositiveInfinity);
        Assert.Equal(0, endless.LogMeanOffset);
        Assert.Equal(0, endless.LogStandardDeviation);
        Assert.Equal(0, endless.CriticalRise(3, 0.975));
        for (double level = -20; level < 40; level += 5)
        {
            double snr = Math.Pow(10, level / 10);
            Agreement.Within(1e-5, endless.Rise(snr), many.Rise(snr), level);
        }
    }

    [Fact]
    public void MoreLooksShowLessOfASignal()
    {
        // The log of a scattered reading lies lower without a signal than with one; averaging takes that away.
        foreach (double snr in (double[])[0.1, 1, 10, 1000])
        {
            double last = double.PositiveInfinity;
            foreach (double looks in (double[])[0.5, 1, 2, 5, 50, double.PositiveInfinity])
            {
                double rise = new DetectorNoise(looks).Rise(snr);
                Assert.True(rise < last);
                last = rise;
            }
        }
    }

    [Fact]
    public void LogAveragesShrinkTheScatterAndNothingElse()
    {
        var single = new DetectorNoise(2);
        var averaged = new DetectorNoise(2, 16);
        Assert.Equal(single.LogStandardDeviation / 4, averaged.LogStandardDeviation, 1e-13);
        Assert.Equal(single.LogMeanOffset, averaged.LogMeanOffset);
        Assert.Equal(single.Rise(3), averaged.Rise(3));
        Assert.Equal(single.CriticalRise(16, 0.95), averaged.CriticalRise(1, 0.95), 1e-13);
    }

    [Fact]
    public void TheCriticalRiseGrowsWithConfidenceAndShrinksWithReadings()
    {
        var noise = new DetectorNoise(1);
        Assert.True(noise.CriticalRise(3, 0.99) > noise.CriticalRise(3, 0.95));
        Assert.True(noise.CriticalRise(10, 0.95) < noise.CriticalRise(3, 0.95));
        Assert.True(noise.CriticalRise(3, 0.05) < 0);
    }

    [Theory]
    [InlineData(1, 2)]
    [InlineData(1, 3)]
    [InlineData(3, 3)]
    [InlineData(20, 5)]
    public void NoiseAloneExceedsTheCriticalRiseAsOftenAsItSays(double looks, int readings)
    {
        const int trials = 100_000;
        const double tail = 0.025;
        var noise = new DetectorNoise(looks);
        double limit = noise.CriticalRise(readings, 1 - tail) + noise.LogMeanOffset;
        var detector = new Detector(Averaging.Power, looks);
        var random = new RandomSource(20_0301);
        int above = 0;
        for (int trial = 0; trial < trials; trial++)
        {
            double sum = 0;
            for (int i = 0; i < readings; i++)
            {
                sum += detector.Reading(0, random);
            }

            above += sum / readings > limit ? 1 : 0;
        }

        // Four binomial standard deviations, and what the expansion is off by: 0.09/(MN) standard deviations at a density of 0.06
        // to 0.09 each.
        double slack = (4 * Math.Sqrt(tail * (1 - tail) / trials)) + (0.09 / (looks * readings) * 0.09);
        Assert.InRange((double)above / trials, tail - slack, tail + slack);
    }

    [Theory]
    [InlineData(0.4, 1)]
    [InlineData(1, 0.4)]
    public void LessThanHalfALookIsRefused(double looks, double averages)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new DetectorNoise(looks, averages));
    }
}
