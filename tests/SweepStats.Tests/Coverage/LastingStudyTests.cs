using SweepStats.StudyRuns.Lasting;
using Xunit;

namespace SweepStats.Tests.Coverage;

/// <summary>A seeded part of the study of sweeps that resemble those before them.</summary>
public sealed class LastingStudyTests
{
    private static readonly int Campaigns = Draws.Of(25);

    [Theory]
    [InlineData(LastingKind.EachFrequency, 5, 0.5)]
    [InlineData(LastingKind.EachFrequency, 10, 0.5)]
    [InlineData(LastingKind.EachFrequency, 10, 0.8)]
    [InlineData(LastingKind.WholeAndEachFrequency, 10, 0.5)]
    [InlineData(LastingKind.HalfOfEachFrequency, 10, 0.8)]
    [InlineData(LastingKind.WideRipple, 10, 0.8)]
    [InlineData(LastingKind.SteadyPhase, 10, 1)]
    public void IntervalsHoldWhereSweepsGoTogether(LastingKind kind, int sweeps, double strength)
    {
        LastingRow row = LastingStudy.Run(new LastingCell(kind, sweeps, strength) { Points = 61 }, Campaigns, seed: 5);
        // Intervals of one campaign go together; smooth ripple has some five independent frequencies.
        double trials = Campaigns * (kind is LastingKind.WideRipple or LastingKind.SteadyPhase ? 4 : 20);
        Assert.InRange(row.Held, 0.95 - (3 * Math.Sqrt(0.05 * 0.95 / trials)), 1);
        Assert.InRange(row.ClaimedTooMuch, 0, 0.05);
        Assert.InRange(row.ToldOrHeld, 0.9, 1);
        Assert.True(row.HeldAsIndependent < 0.9, $"{row.HeldAsIndependent:P1} hold without: nothing to see here.");
    }

    [Theory]
    [InlineData(LastingKind.EachFrequency, 3)]
    [InlineData(LastingKind.WideRipple, 5)]
    [InlineData(LastingKind.Whole, 10)]
    public void IndependentSweepsLoseNothing(LastingKind kind, int sweeps)
    {
        LastingRow row = LastingStudy.Run(new LastingCell(kind, sweeps, 0) { Points = 61 }, Campaigns, seed: 6);
        Assert.Equal(0, row.Found);
        // To the last bit: nothing is rounded on the way.
        Assert.Equal(1.0, row.WidthRatio);
        Assert.Equal(row.HeldAsIndependent, row.Held);
    }
}
