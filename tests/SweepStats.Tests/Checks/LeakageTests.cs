using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class LeakageTests
{
    [Theory]
    [InlineData(65, 40, false)]
    [InlineData(45, 40, true)]
    [InlineData(95, 40, false)]
    public void OnlyLeakageThatMattersIsReported(double plateDb, double shieldingDb, bool reported)
    {
        Campaign campaign = Taken(plateDb, shieldingDb);
        Finding? finding = Analysis.Run(campaign, new AnalysisPlan()).Findings
            .SingleOrDefault(f => f is { Code: "leakage", Severity: Severity.Warning });
        Assert.Equal(reported, finding is not null);
        if (finding is not null)
        {
            // 5 dB apart: 1 + 0.5623 is 3.9 dB, 1 − 0.5623 is 7.2 dB, by hand.
            Assert.InRange(finding.Size!.Value.Value, 6.8, 7.6);
            Assert.Contains("seal the edges", finding.NextStep, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void APlateThatShowsOnlyNoiseIsNoLeakageHoweverFewLooks()
    {
        RehearsalPlan deep = Rehearsed.Plan with
        {
            Averaging = Averaging.Sample,
            Looks = 1,
            PlateDb = 130,
            PlateSweeps = 3,
            ShieldingStartDb = 55,
            ShieldingStopDb = 55,
        };
        int alarms =
            Draws.Seeds(60)
                .Count(seed => Rehearsed.Analysed(deep with { Seed = seed }).Findings
                    .Any(f => f is { Code: "leakage", Severity: Severity.Warning }));
        Often.AtMost(alarms, Draws.Of(60), 0.005, whenFull: 3);
    }

    // A leakage 3 to 6 dB below the noise does not show behind the plate, and shifts values 14 dB over the noise by 1 to 2 dB: it
    // is told, and in the intervals.
    [Theory]
    [InlineData(73)]
    [InlineData(76)]
    public void WhatAPlateCouldNotShowIsToldAndAllowedFor(double plateDb)
    {
        RehearsalPlan plan = Rehearsed.Plan with
        {
            ShieldingStartDb = 56,
            ShieldingStopDb = 56,
            LinearitySourcesDbm = [0, 10],
            Placements = 3,
            CoveredSweeps = 2,
            PlateSweeps = 3,
            PlateDb = plateDb,
        };
        AnalysisResult[] results =
            [.. Enumerable.Range(1, 20).Select(seed => Rehearsed.Analysed(plan with { Seed = (ulong)seed }))];
        Assert.All(results, result => Assert.Contains(result.Findings, f => f.Code == "leakage"));
        Assert.All(results, result => Assert.DoesNotContain(UntestedDoubt.Leakage, result.Verdict.Untested));
        ShieldingReading.Measured[] values =
            [.. results.SelectMany(r => r.Curves[0].Readings).OfType<ShieldingReading.Measured>()];
        Often.AtLeast(values.Count(m => m.Shielding.Low.Value <= 56 && m.Shielding.High.Value >= 56), values.Length, 0.95);
    }

    // Whoever exchanges the two reads of a leakage that nothing isolates.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void PlateAndReferenceExchangedAreToldAsThat(bool linearity)
    {
        RehearsalPlan plan = Rehearsed.Plan with
        {
            PlateSweeps = 3,
            ShieldingStartDb = 30,
            ShieldingStopDb = 30,
            LinearitySourcesDbm = linearity ? [0, 10] : [],
        };
        Assert.DoesNotContain(Rehearsed.Analysed(plan).Findings, f => f.NextStep.Contains("exchanged", StringComparison.Ordinal));
        Campaign drawn = Rehearser.Draw(plan).Campaign;
        Campaign exchanged = drawn with { Sweeps = [.. drawn.Sweeps.Select(Exchanged)] };
        AnalysisResult result = Analysis.Run(exchanged, new AnalysisPlan { Averaging = Averaging.Power });
        Assert.Equal(Trust.Untrustworthy, result.Verdict.Trust);
        Assert.Contains("plate and reference", result.Findings[0].NextStep, StringComparison.Ordinal);
        Assert.Contains(result.Findings, f => f is { Code: "leakage", Severity: Severity.Fault });
        Assert.DoesNotContain(result.Findings, f => f.NextStep.StartsWith("Isolate", StringComparison.Ordinal)
            || f.NextStep.StartsWith("Find the way round", StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutPlateSweepsNothingIsSaid() =>
    Assert.DoesNotContain(Rehearsed.Analysed(Rehearsed.Plan).Findings, f => f.Code == "leakage");

    private static Sweep Exchanged(Sweep sweep) => sweep.Role switch
    {
        SweepRole.Plate => new Sweep(sweep.Name, SweepRole.Reference, sweep.Grid, sweep.Levels, sweep.Scale),
        SweepRole.Reference => new Sweep(sweep.Name, SweepRole.Plate, sweep.Grid, sweep.Levels, sweep.Scale),
        _ => sweep,
    };

    private static Campaign Taken(double plateDb, double shieldingDb)
    {
        Campaign campaign =
            Rehearser.Draw(Rehearsed.Plan with { ShieldingStartDb = shieldingDb, ShieldingStopDb = shieldingDb }).Campaign;
        IEnumerable<Sweep> plates = Rehearser.Draw(
            Rehearsed.Plan with { Seed = 77, ShieldingStartDb = plateDb, ShieldingStopDb = plateDb }).Campaign.Sweeps
            .Where(s => s.Role == SweepRole.Covered).Select(s => new Sweep("plate", SweepRole.Plate, s.Grid, s.Levels, s.Scale));
        return campaign with { Sweeps = [.. campaign.Sweeps, .. plates] };
    }
}
