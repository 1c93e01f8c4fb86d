using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Floor;

/// <summary>Between which limits the signal behind the reading of a kept look lies.</summary>
public sealed class HeldNoiseTests
{
    private const double K = DetectorNoise.DecibelsPerNeper;
    private static readonly double SingleDb = new DetectorNoise(1).LogStandardDeviation;

    [Fact]
    public void TheScatterOfTheFloorTellsWhatIsKept()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/held.csv"))
        {
            HeldNoise noise = HeldNoise.Highest(Math.Sqrt(row[2]));
            Agreement.Within(1e-6, row[1], noise.LogMeanOffset, row);
            Agreement.Within(1e-6, Math.Sqrt(row[2]), noise.LogStandardDeviation, row);
            Agreement.Within(1e-6, row[5] - row[1], noise.LeastRiseDb, row);
            Assert.Equal((KeptLook.Highest, row[0]), (noise.Kept, Math.Round(noise.Looks, 3)));
        }
    }

    [Fact]
    public void ByHandAmplitudesAddUp()
    {
        // Single looks: mean amplitude √π/2, 1.4577 dB over the log mean (γ − ln(4/π))·K. A reading 6.0206 dB over that mean
        // amplitude is twice it: the weakest signal is as large as the mean amplitude of the noise, √π/2, at −1.0491 dB.
        HeldNoise noise = HeldNoise.Highest(SingleDb);
        Assert.Equal(K * (0.5772156649015329 + Math.Log(Math.PI / 4)), noise.LeastRiseDb, 1e-6);
        Assert.Equal(K * Math.Log(Math.PI / 4), noise.SnrInDecibels(noise.LeastRiseDb + (20 * Math.Log10(2))), 1e-6);
        Assert.Equal(double.NegativeInfinity, noise.SnrInDecibels(noise.LeastRiseDb));
        // The strongest signal behind a peak is the reading itself.
        Assert.Equal(noise.LogMeanOffset + 7, noise.StrongestSnrInDecibels(7), 1e-12);
    }

    [Fact]
    public void TheLowestIsReckonedToBeThatOfAThousandLooks()
    {
        HeldNoise noise = HeldNoise.Lowest(SingleDb);
        Assert.Equal(new DetectorNoise(1).LogMeanOffset - 30, noise.LogMeanOffset, 1e-9);
        // A reading at the noise of the lowest hides a signal as large as the largest amplitude in 1000 looks: 8.712 dB over the
        // noise (held.csv), and itself.
        double[] thousand = Fixtures.Numbers("oracles/held.csv").Single(r => r[0] == 1000);
        double together = 20 * Math.Log10(Math.Pow(10, thousand[5] / 20) + Math.Pow(10, noise.LogMeanOffset / 20));
        Assert.Equal(together, noise.StrongestSnrInDecibels(0), 1e-9);
    }

    [Theory]
    [InlineData(Averaging.Peak, 3)]
    [InlineData(Averaging.Peak, 100)]
    [InlineData(Averaging.Lowest, 3)]
    [InlineData(Averaging.Lowest, 100)]
    public void DrawnReadingsLieBetweenTheLimitsInTheMean(Averaging averaging, int looks)
    {
        const int Draws = 4000;
        var detector = new Detector(averaging, looks);
        var random = new RandomSource(8);
        double[] floor = [.. Enumerable.Range(0, Draws).Select(_ => detector.Reading(0, random))];
        double deviation = Math.Sqrt(Sample.SquaredDeviations(floor, Sample.Mean(floor)) / (Draws - 1));
        HeldNoise noise = averaging == Averaging.Peak ? HeldNoise.Highest(deviation) : HeldNoise.Lowest(deviation);
        foreach (double snr in new double[] { -10, -3, 0, 5, 10, 20, 30 })
        {
            double[] drawn = [.. Enumerable.Range(0, Draws).Select(_ => detector.Reading(Math.Pow(10, snr / 10), random))];
            double rise = Sample.Mean(drawn) - Sample.Mean(floor);
            double error = 4 * Math.Sqrt((Sample.SquaredDeviations(drawn, Sample.Mean(drawn)) / (Draws - 1) / Draws)
                + (deviation * deviation / Draws));
            // Levels relative to the floor as displayed, since how far it lies over the noise is not known of the lowest.
            double signal = snr - Sample.Mean(floor);
            Assert.True(noise.SnrInDecibels(rise - error) - noise.LogMeanOffset <= signal, $"{averaging} {looks} {snr} dB: the "
                + "signal is weaker than the weakest possible");
            Assert.True(noise.StrongestSnrInDecibels(rise + error) - noise.LogMeanOffset >= signal, $"{averaging} {looks} "
                + $"{snr} dB: the signal is stronger than the strongest possible");
        }
    }

    [Theory]
    [InlineData(2.0)]
    [InlineData(0.2)]
    public void WhatNoiseAloneDoesIsPassedAsOftenAsIsSaid(double deviation)
    {
        // Less scatter than a million looks have shrinks the shape; the quantile stays one of its own distribution.
        HeldNoise noise = HeldNoise.Highest(deviation);
        double mean = 0, square = 0;
        const int Steps = 20_000;
        for (int i = 0; i < Steps; i++)
        {
            double rise = noise.HighestReading((i + 0.5) / Steps);
            mean += rise / Steps;
            square += rise * rise / Steps;
        }

        Assert.Equal(0, mean, 1e-3);
        Assert.Equal(deviation, Math.Sqrt(square), 5e-3);
        Assert.Equal(noise.HighestReading(0.975), noise.CriticalRise(1, 0.975));
        Assert.True(noise.CriticalRise(10, 0.975) < noise.CriticalRise(3, 0.975));
    }
}
