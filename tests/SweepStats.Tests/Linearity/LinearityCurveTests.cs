using SweepStats.Linearity;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Linearity;

public sealed class LinearityCurveTests
{
    [Fact]
    public void TheCompressionPointLiesOnTheLineBetweenTheLevels()
    {
        // From 0.4 dB short at 0 dBm to 2 dB at 8 dBm: 1 dB at 0 + 8·(1 − 0.4)/(2 − 0.4) = 3 dBm, by hand.
        Assert.Equal(3, Curve((0, 0.4), (8, 2)).CompressionDbm!.Value, 12);
        // Reached at the first step: from 0 at −10 dBm to 2 dB at 0 dBm, so at −5 dBm.
        Assert.Equal(-5, Curve((0, 2)).CompressionDbm!.Value, 12);
        Assert.Equal(0, Curve((0, 1)).CompressionDbm!.Value, 12);
        Assert.Null(Curve((0, 0.4), (8, 0.99)).CompressionDbm);
    }

    [Fact]
    public void TheResultHoldsTheCurveOfTheLinearitySweeps()
    {
        LinearityCurve curve =
            Rehearsed.Analysed(Rehearsed.Plan with { LinearitySourcesDbm = [-10, 0, 10], LinearitySweeps = 4 }).Linearity!;
        Assert.Equal([0, 10], curve.Steps.Select(s => s.HighDbm));
        Assert.Equal(-10, curve.LowestDbm);
        Assert.Equal(12, curve.SweepCount);
        Assert.All(curve.Steps, s => Assert.InRange(s.ShortfallDb, s.Interval!.Value.Low, s.Interval.Value.High));
        Assert.Null(Rehearsed.Analysed(Rehearsed.Plan).Linearity);
        Assert.Null(Rehearsed.Analysed(Rehearsed.Plan with { LinearitySourcesDbm = [10] }).Linearity);
    }

    private static LinearityCurve Curve(params (double Source, double Shortfall)[] steps) => new()
    {
        Steps = [.. steps.Select(s => new LinearityStep(-10, s.Source, s.Shortfall, null, 1, 1, 10))],
        Confidence = Confidence.NinetyFive,
    };
}
