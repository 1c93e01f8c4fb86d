using SweepStats.Checks;
using SweepStats.Rehearsal;
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
        Finding? finding = Analysis.Run(campaign, new AnalysisPlan()).Findings.SingleOrDefault(f => f is { Code: "leakage", Severity: Severity.Warning });
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
        RehearsalPlan deep = Rehearsed.Plan with { Averaging = Averaging.Sample, Looks = 1, PlateDb = 130, PlateSweeps = 3, ShieldingStartDb = 55, ShieldingStopDb = 55 };
        int alarms = Draws.Seeds(60).Count(seed => Rehearsed.Analysed(deep with { Seed = seed }).Findings.Any(f => f is { Code: "leakage", Severity: Severity.Warning }));
        Often.AtMost(alarms, Draws.Of(60), 0.005, whenFull: 3);
    }

    // A leakage 3 to 6 dB below the noise does not show behind the plate, and shifts values 14 dB over the noise by 1 to 2 dB.
    [Theory]
    [InlineData(73)]
    [InlineData(76)]
    public void APlateThatCouldNotShowWhatMattersIsNoTest(double plateDb)
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
        Assert.All(Enumerable.Range(1, 20), seed =>
        {
            AnalysisResult result = Rehearsed.Analysed(plan with { Seed = (ulong)seed });
            Assert.NotEqual(Trust.Trustworthy, result.Verdict.Trust);
            Finding[] told = [.. result.Findings.Where(f => f.Code == "leakage")];
            Assert.NotEmpty(told);
            Assert.True(told.Any(f => f.Severity == Severity.Warning) || result.Verdict.Untested.Contains(UntestedDoubt.Leakage));
        });
    }

    [Fact]
    public void WithoutPlateSweepsNothingIsSaid() => Assert.DoesNotContain(Rehearsed.Analysed(Rehearsed.Plan).Findings, f => f.Code == "leakage");

    private static Campaign Taken(double plateDb, double shieldingDb)
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan with { ShieldingStartDb = shieldingDb, ShieldingStopDb = shieldingDb }).Campaign;
        IEnumerable<Sweep> plates = Rehearser.Draw(Rehearsed.Plan with { Seed = 77, ShieldingStartDb = plateDb, ShieldingStopDb = plateDb }).Campaign.Sweeps
            .Where(s => s.Role == SweepRole.Covered).Select(s => new Sweep("plate", SweepRole.Plate, s.Grid, s.Levels, s.Scale));
        return campaign with { Sweeps = [.. campaign.Sweeps, .. plates] };
    }
}
