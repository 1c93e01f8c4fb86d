using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class SuspectedFloorTests
{
    // Shielding from 40 to 100 dB over 70 dB of range: the covered level meets the noise half way up the band.
    private static readonly RehearsalPlan Hidden = Rehearsed.Plan with
    {
        Points = 201,
        FloorSweeps = 0,
        ReferenceRippleDb = 6,
        ShieldingStartDb = 40,
        ShieldingStopDb = 100,
    };

    [Fact]
    public void CoveredSweepsThatReachTheNoiseAreSuspected()
    {
        int found = 0;
        foreach (ulong seed in Draws.Seeds(40))
        {
            if (Suspicions(Hidden with { Seed = seed }) is [{ } only])
            {
                found++;
                // True noise power equals the signal at 40 + 60·x = 70 dB: 173 MHz, half way between 30 MHz and 1 GHz on a
                // logarithmic scale. Below that the reference's shape shows; a stretch at which it happens to be straight says
                // nothing either way.
                Assert.True(only.Where[0].Start.Value > 130e6, $"suspected from {only.Where[0].Start}");
                Assert.Equal(Severity.Warning, only.Severity);
            }
        }

        Often.AtLeast(found, Draws.Of(40), 0.95, whenFull: 38);
    }

    [Theory]
    [InlineData(6)]
    [InlineData(1)]
    [InlineData(0)]
    public void CoveredSweepsAboveTheNoiseAreNot(double ripple) =>
        Assert.Equal(0, Draws.Seeds(40)
            .Count(seed => Suspicions(Hidden with { Seed = seed, ShieldingStopDb = 55, ReferenceRippleDb = ripple }).Length > 0));

    [Fact]
    public void WithAMeasuredFloorNothingNeedsToBeSuspected() => Assert.Empty(Suspicions(Hidden with { FloorSweeps = 3 }));

    [Fact]
    public void ADeclaredFloorThatIsFarTooLowIsSuspectedToo()
    {
        Campaign campaign = Rehearser.Draw(Hidden).Campaign;
        Finding[] Declared(double level) =>
            [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power, DeclaredFloorDb = level }).Findings
                .Where(f => f.Code == "suspected-floor")];
        Assert.Single(Declared(-130));
        Assert.Empty(Declared(-100));
    }

    private static Finding[] Suspicions(RehearsalPlan plan) =>
        [.. Rehearsed.Analysed(plan).Findings.Where(f => f.Code == "suspected-floor")];
}
