using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Rehearsal;

/// <summary>
/// Drawn readings against the published moments of noise; slack is four and a half standard errors of what was drawn.
/// </summary>
public sealed class DetectorTests
{
    private const int Draws = 40_000;
    private const double Slack = 4.5;

    [Fact]
    public void PowerAveragedNoiseHasThePublishedMoments()
    {
        foreach (double[] row in Fixtures.Numbers("published/noise-statistics/averages.csv"))
        {
            Check(new Detector(Averaging.Power, row[0]), 0, row[1], row[2]);
        }
    }

    [Fact]
    public void LogAveragedNoiseHasThePublishedMoments()
    {
        foreach (double[] row in Fixtures.Numbers("published/noise-statistics/averages.csv")
            .Where(row => row[0] is 1 or 3 or 10 or 20))
        {
            Check(new Detector(Averaging.Log, row[0]), 0, -2.506816, row[3]);
        }
    }

    [Fact]
    public void ASignalInSingleLookNoiseHasThePublishedMoments()
    {
        foreach (double[] row in Fixtures.Numbers("published/noise-statistics/signal-error.csv")
            .Where(row => row[0] % 3 == 0 && Math.Abs(row[0]) <= 30))
        {
            Check(new Detector(Averaging.Sample, 7), Math.Pow(10, row[0] / 10), row[0] + row[2], row[4]);
        }
    }

    [Theory]
    [InlineData(3, -3)]
    [InlineData(3, 6)]
    [InlineData(20, 0)]
    [InlineData(2.5, 3)]
    public void ASignalInAveragedNoiseRisesAsTheCurveSays(double looks, double level)
    {
        double snr = Math.Pow(10, level / 10);
        var noise = new DetectorNoise(looks);
        double[] drawn = Draw(new Detector(Averaging.Power, looks), snr);
        double error = Sample.StandardDeviation(drawn) / Math.Sqrt(Draws);
        Agreement.Within(Slack * error, noise.LogMeanOffset + noise.Rise(snr), Sample.Mean(drawn), looks, level);
    }

    [Fact]
    public void TheMeanPowerIsSignalAndNoiseTogether()
    {
        // 1 + γ, whatever the averaging in power; relative scatter √((1 + 2γ)/M)/(1 + γ).
        foreach ((double looks, double snr) in new[] { (1.0, 0.0), (1.0, 4.0), (5.5, 0.7), (40.0, 100.0) })
        {
            double[] power = [.. Draw(new Detector(Averaging.Power, looks), snr).Select(db => Math.Pow(10, db / 10))];
            double deviation = Math.Sqrt((1 + (2 * snr)) / looks);
            Agreement.Within(Slack * deviation / Math.Sqrt(Draws), 1 + snr, Sample.Mean(power), looks, snr);
        }
    }

    [Fact]
    public void ThePublishedShareOfReadingsLiesBelowEachPublishedLevel()
    {
        // Single-look noise: median ln 2 below the power mean is −1.5917 dB; 90, 99 and 99.9 % lie below +3.6222, +6.6325 and
        // +8.3934 dB.
        double[] drawn = Draw(new Detector(Averaging.Sample, 1), 0);
        foreach ((double level, double share) in new[] { (-1.5917, 0.5), (3.6222, 0.9), (6.6325, 0.99), (8.3934, 0.999) })
        {
            double slack = Slack * Math.Sqrt(share * (1 - share) / Draws);
            Agreement.Within(slack, share, drawn.Count(db => db < level) / (double)Draws, level);
        }
    }

    private static void Check(Detector detector, double snr, double mean, double deviation)
    {
        double[] drawn = Draw(detector, snr);
        Agreement.Within(Slack * deviation / Math.Sqrt(Draws), mean, Sample.Mean(drawn), snr, mean);
        // The variance of a variance is (kurtosis − 1)/n; single-look log readings have the largest kurtosis, 5.4.
        Agreement.Relative(Slack * Math.Sqrt(4.4 / Draws) / 2, deviation, Sample.StandardDeviation(drawn), snr, deviation);
    }

    private static double[] Draw(Detector detector, double snr)
    {
        var random = new RandomSource(1905);
        var drawn = new double[Draws];
        for (int i = 0; i < drawn.Length; i++)
        {
            drawn[i] = detector.Reading(snr, random);
        }

        return drawn;
    }
}
