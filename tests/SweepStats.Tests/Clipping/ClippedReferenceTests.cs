using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Clipping;

/// <summary>A receiver that shows no more than its limit: what is left of the shielding there.</summary>
public sealed class ClippedReferenceTests
{
    private const double Truth = 40;
    private static readonly RehearsalPlan Plan = new() { Points = 201, ReferenceRippleDb = 6, ScatterDb = 0.3 };

    [Theory]
    [InlineData(101)]
    [InlineData(20)]
    public void NoClippedFrequencyIsAValueAndItsBoundsHold(int clipped)
    {
        (int bounds, int over) = (0, 0);
        double limit = Limit(clipped);
        foreach (ulong seed in Draws.Seeds(20))
        {
            Campaign drawn = Rehearser.Draw(Plan with { Seed = seed }).Campaign;
            Campaign cut = Rehearser.Draw(Plan with { Seed = seed, LimitDbm = limit }).Campaign;
            ShieldingCurve curve = Analysis.Run(cut, new AnalysisPlan { Averaging = Averaging.Power }).Curves[0];
            foreach (ShieldingReading reading in Cut(drawn).Select(f => curve.Readings[f]))
            {
                var bound = Assert.IsType<ShieldingReading.AtLeast>(reading);
                Assert.Equal(ShieldingState.Overloaded, bound.State);
                bounds++;
                over += bound.Bound.Value > Truth ? 1 : 0;
            }

            int[] Cut(Campaign campaign) =>
                [.. Enumerable.Range(0, Plan.Points)
                    .Where(f => campaign.Sweeps.Any(s => s.Role == SweepRole.Reference && s.Levels[f] > limit))];
        }

        Assert.True(bounds >= Draws.Of(20) * clipped * 0.9, $"{bounds}");
        // One side of the interval promises 2.5 %; three binomial deviations on top.
        Assert.True(over <= (0.025 * bounds) + (3 * Math.Sqrt(0.025 * bounds)), $"{over} of {bounds}");
    }

    [Fact]
    public void ACoveredLevelAtTheLimitLeavesNothingToClaim()
    {
        AnalysisResult result = Analysis.Run(
            Rehearser.Draw(Plan with { ReferenceDbm = -20, ShieldingStartDb = 0, ShieldingStopDb = 40, LimitDbm = -30 }).Campaign,
            new AnalysisPlan { Averaging = Averaging.Power });
        ShieldingReading[] covered = [.. result.Curves[0].Readings.Where((_, f) => result.Clipping.Covered[0].IsAt(f))];
        Assert.True(covered.Length > 30);
        Assert.All(covered, r =>
        {
            Assert.IsType<ShieldingReading.Unreadable>(r);
            Assert.Equal(ShieldingState.Overloaded, r.State);
            Assert.Null(r.Evidence.OneSidedLow);
        });
        Finding finding = Assert.Single(result.Findings, f => f.Code == "saturation-plateau" && f.Role == SweepRole.Covered);
        Assert.Contains("no figure can be claimed there", finding.Message, StringComparison.Ordinal);
        Assert.Null(result.Bands[0].AtLeast);
        Assert.Equal(result.Curves[0].Readings.Count(r => r.State == ShieldingState.Overloaded), result.Bands[0].OverloadedCount);
    }

    [Fact]
    public void NoOneIsToldToSendMorePowerIntoAnOverloadedReceiver()
    {
        var asked = new AnalysisPlan
        {
            Averaging = Averaging.Power,
            Requirement = SweepStats.Bands.Requirement.Constant(new Decibels(80)),
        };
        AnalysisResult all = Analysis.Run(Rehearser.Draw(Plan with { LimitDbm = -40 }).Campaign, asked);
        Assert.DoesNotContain(all.Findings, f => f.Code is "under-ranged" or "capped");

        // Where half of the band is clear of the limit its own range is still short, but more level is not the way.
        AnalysisResult half =
            Analysis.Run(Rehearser.Draw(Plan with { LimitDbm = Limit(101), ShieldingStopDb = 90 }).Campaign, asked);
        Finding[] range = [.. half.Findings.Where(f => f.Code is "under-ranged" or "capped")];
        Assert.Equal(["under-ranged", "capped"], range.Select(f => f.Code));
        Assert.All(range, f => Assert.DoesNotMatch("source power|attenuation|preamplifier", f.NextStep));
        Assert.All(range, f => Assert.Contains("narrower", f.NextStep, StringComparison.Ordinal));
    }

    [Fact]
    public void AFloorAboveTheCoveredNoiseIsStillSeenUnderAnOverloadedReference()
    {
        RehearsalPlan raised = Plan with
        {
            LimitDbm = -40,
            ShieldingStartDb = 90,
            ShieldingStopDb = 90,
            OddSweeps = [.. Enumerable.Range(1, 5).Select(n => new SweepStats.Rehearsal.OddSweep(SweepRole.Floor, n, 6))],
        };
        AnalysisResult result = Analysis.Run(Rehearser.Draw(raised).Campaign, new AnalysisPlan { Averaging = Averaging.Power });
        Assert.All(result.Curves[0].Readings, r => Assert.Equal(ShieldingState.Overloaded, r.State));
        Assert.Contains(result.Findings, f => f.Code == "settings-changed" && f.Severity == Severity.Fault);
    }

    [Fact]
    public void EveryFrequencyThatTheFindingCountsIsABoundAndNoOther()
    {
        AnalysisResult result = Analysis.Run(Rehearser.Draw(Plan with { LimitDbm = Limit(6) }).Campaign,
            new AnalysisPlan { Averaging = Averaging.Power });
        Finding finding = Assert.Single(result.Findings, f => f.Code == "saturation-plateau");
        Assert.NotEqual(Severity.Note, finding.Severity);
        Assert.Contains("it is at least what is shown there", finding.Message, StringComparison.Ordinal);
        Assert.Equal(result.Clipping.Reference.Count, result.Curves[0].Readings.Count(r => r.State == ShieldingState.Overloaded));
    }

    // The level that so many points of the true reference pass.
    private static double Limit(int clipped) => Rehearser.Draw(Plan with { ScatterDb = 0, Looks = 1e6, FloorDbm = -300 })
        .Campaign.Sweeps.First(s => s.Role == SweepRole.Reference).Levels.OrderDescending().ElementAt(clipped);
}
