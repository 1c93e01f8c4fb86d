using MathNet.Numerics.Random;
using SweepStats.Floor;
using SweepStats.Planning;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Planning;

public sealed class NoisyLevelTests
{
    private const int Draws = 20_000;

    [Theory]
    [InlineData(1, 1, -40)]
    [InlineData(1, 1, 0)]
    [InlineData(1, 10, 3)]
    [InlineData(2.5, 1, 10)]
    [InlineData(100, 1, -10)]
    [InlineData(100, 1, 30)]
    public void DrawnReadingsHaveTheMeanOfTheRiseCurve(double looks, double logAverages, double snrDb)
    {
        var noise = new DetectorNoise(looks, logAverages);
        double[] drawn = Drawn(noise, snrDb);
        double rise = noise.Rise(Math.Pow(10, snrDb / 10));
        Assert.Equal(rise, Sample.Mean(drawn), 4 * Sample.StandardDeviation(drawn) / Math.Sqrt(Draws));
    }

    // The variance of log readings of one look has a heavy tail: relative error of the variance over 20 000 draws about 1.5 %.
    [Theory]
    [InlineData(1, 1, -60)]
    [InlineData(20, 1, -60)]
    [InlineData(20, 1, 15)]
    [InlineData(1, 25, -60)]
    [InlineData(1, 1, 20)]
    public void ClearOfTheNoiseAndInItTheVarianceIsTheirs(double looks, double logAverages, double snrDb)
    {
        var noise = new DetectorNoise(looks, logAverages);
        double seen = Sample.StandardDeviation(Drawn(noise, snrDb));
        Assert.Equal(1, seen * seen / NoisyLevel.Variance(noise, snrDb), 0.06);
    }

    /// <summary>Well over the noise the trigamma function is three terms of its series; against all of them.</summary>
    [Theory]
    [InlineData(20, 23.1)]
    [InlineData(20, 40)]
    [InlineData(1, 60)]
    [InlineData(1e4, -60)]
    public void ALargeShapeHasTheVarianceOfAllTerms(double looks, double snrDb)
    {
        double snr = Math.Pow(10, snrDb / 10), shape = looks * (1 + snr) * (1 + snr) / (1 + (2 * snr));
        Assert.True(shape > 2000);
        double variance = Math.Pow(DetectorNoise.DecibelsPerNeper, 2) * GammaFunctions.Polygamma(1, shape);
        Assert.Equal(1, NoisyLevel.Variance(new DetectorNoise(looks), snrDb) / variance, 1e-14);
    }

    private static double[] Drawn(DetectorNoise noise, double snrDb)
    {
        var random = new MersenneTwister(7);
        return [.. Enumerable.Range(0, Draws).Select(_ => NoisyLevel.Sample(noise, snrDb, random))];
    }
}
