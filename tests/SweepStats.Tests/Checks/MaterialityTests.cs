using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class MaterialityTests
{
    private static readonly AnalysisResult Result =
        Analysis.Run(Rehearser.Draw(Rehearsed.Plan).Campaign, new AnalysisPlan { Averaging = Averaging.Power });

    [Fact]
    public void HalfAHalfWidthIsTheLimit()
    {
        double half = Materiality.HalfWidthDb(Result.Curves);
        Assert.InRange(half, 0.01, 10);
        Assert.Equal(Severity.Note, Materiality.Weight(0.49 * half, Result.Curves));
        Assert.Equal(Severity.Note, Materiality.Weight(-0.49 * half, Result.Curves));
        Assert.Equal(Severity.Warning, Materiality.Weight(0.51 * half, Result.Curves));
        Assert.Equal(Severity.Warning, Materiality.Weight(-0.51 * half, Result.Curves));
    }

    [Fact]
    public void WhatNobodyKnowsMatters() => Assert.Equal(Severity.Warning, Materiality.Weight(null, Result.Curves));

    [Fact]
    public void WithoutAnIntervalAnyShiftMatters() => Assert.Equal(Severity.Warning, Materiality.Weight(0.001, []));

    [Fact]
    public void AReadingIsHeldAgainstItsOwnInterval()
    {
        var measured = (ShieldingReading.Measured)Result.Curves[0].Readings.First(r => r is ShieldingReading.Measured);
        double width = measured.Shielding.High.Value - measured.Shielding.Low.Value;
        Assert.False(Materiality.Matters(0.24 * width, measured));
        Assert.True(Materiality.Matters(-0.26 * width, measured));
    }
}
