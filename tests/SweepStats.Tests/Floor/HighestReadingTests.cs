using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Floor;

public sealed class HighestReadingTests
{
    // R 4.2.2: 10*log10(qgamma(p, M)/M) - 10/log(10)*(digamma(M) - log(M))
    [Theory]
    [InlineData(1, 0.975, 8.1757604164)]
    [InlineData(1, 0.999999, 13.9104851722)]
    [InlineData(3, 0.975, 4.5805893202)]
    [InlineData(3, 0.999999, 8.8093594089)]
    [InlineData(20, 0.999999, 3.9857322655)]
    [InlineData(100, 0.975, 0.8326645658)]
    public void PowerAveragesFollowTheGammaQuantileOfR(double looks, double probability, double expected) =>
        Assert.Equal(expected, new DetectorNoise(looks).HighestReading(probability), 9);

    [Fact]
    public void OneReadingInAThousandOfLogAveragedNoiseLiesHigher()
    {
        var noise = new DetectorNoise(1, 10);
        double limit = noise.HighestReading(0.999) + noise.LogMeanOffset;
        var detector = new Detector(Averaging.Log, 10);
        var random = new RandomSource(8);
        int above = Enumerable.Range(0, 50_000).Count(_ => detector.Reading(0, random) > limit);
        // 50 expected; the binomial standard deviation is 7.
        Assert.InRange(above, 50 - 21, 50 + 21);
    }

    [Fact]
    public void NoiseWithoutScatterGoesNoHigherThanItsMean() =>
        Assert.Equal(0, new DetectorNoise(double.PositiveInfinity).HighestReading(0.999));
}
