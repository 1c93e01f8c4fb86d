using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class NonNormalTests
{
    [Fact]
    public void AContactThatJumpsNowAndThenIsFound()
    {
        int found = Enumerable.Range(1, 40).Count(seed => Findings(Rehearsed.Plan with { Seed = (ulong)seed, Points = 201 }, share: 0.02, jump: -2).Length == 1);
        Assert.InRange(found, 38, 40);
    }

    [Theory]
    [InlineData(Averaging.Power, 20, 3, 40)]
    [InlineData(Averaging.Power, 1, 5, 40)]
    [InlineData(Averaging.Sample, 1, 5, 55)]
    [InlineData(Averaging.Log, 10, 10, 40)]
    public void EvenScatterIsLeftAloneAlsoWhereItChangesOverFrequency(Averaging averaging, double looks, int sweeps, double stop)
    {
        int alarms = Enumerable.Range(1, 60).Count(seed => Findings(
            Rehearsed.Plan with { Seed = (ulong)seed, Points = 201, Averaging = averaging, Looks = looks, ReferenceSweeps = sweeps, CoveredSweeps = sweeps, ShieldingStartDb = 20, ShieldingStopDb = stop }, 0, 0).Length > 0);
        Assert.Equal(0, alarms);
    }

    [Fact]
    public void TwoSweepsSayNothingOfTheirScatter() => Assert.Empty(Findings(Rehearsed.Plan with { Points = 201, ReferenceSweeps = 2, CoveredSweeps = 2 }, 0.1, -3));

    [Theory]
    [InlineData(1.0, null, "steps too coarse")]
    [InlineData(0.0, -31.0, "flat tops")]
    public void StepsAndFlatTopsAreNotTakenForALooseContact(double step, double? limit, string reason)
    {
        RehearsalPlan plan = Rehearsed.Plan with { Points = 201, ReferenceRippleDb = limit is null ? 0 : 3, QuantisationDb = step, LimitDbm = limit };
        AnalysisResult result = Rehearsed.Analysed(plan);
        Assert.DoesNotContain(result.Findings, f => f.Code == "non-normal");
        Assert.Contains(reason, result.Checks.Single(c => c.Code == "non-normal").UntestedBecause, StringComparison.Ordinal);
    }

    [Fact]
    public void AFineDisplayDoesNotHideALooseContact() =>
        Assert.Single(Findings(Rehearsed.Plan with { Points = 201, QuantisationDb = 0.1 }, share: 0.02, jump: -2));

    private static Finding[] Findings(RehearsalPlan plan, double share, double jump)
    {
        var random = new RandomSource(plan.Seed + 500);
        Campaign campaign = Rehearsed.Changed(Rehearser.Draw(plan).Campaign, (s, _, level) => s.Role != SweepRole.Floor && random.Uniform() < share ? level + jump : level);
        return [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = plan.Averaging }).Findings.Where(f => f.Code == "non-normal")];
    }
}
