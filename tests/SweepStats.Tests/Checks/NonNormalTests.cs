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
        int found = Draws.Seeds(40)
            .Count(seed => Findings(Rehearsed.Plan with { Seed = seed, Points = 201 }, share: 0.02, jump: -2).Length == 1);
        Often.AtLeast(found, Draws.Of(40), 0.95, whenFull: 38);
    }

    [Theory]
    [InlineData(Averaging.Power, 20, 3, 40)]
    [InlineData(Averaging.Power, 1, 5, 40)]
    [InlineData(Averaging.Sample, 1, 5, 55)]
    [InlineData(Averaging.Log, 10, 10, 40)]
    public void EvenScatterIsLeftAloneAlsoWhereItChangesOverFrequency(Averaging averaging, double looks, int sweeps, double stop)
    {
        int alarms = Draws.Seeds(60).Count(seed => Findings(
            Rehearsed.Plan with
            {
                Seed = seed,
                Points = 201,
                Averaging = averaging,
                Looks = looks,
                ReferenceSweeps = sweeps,
                CoveredSweeps = sweeps,
                ShieldingStartDb = 20,
                ShieldingStopDb = stop,
            }, 0, 0).Length > 0);
        Assert.Equal(0, alarms);
    }

    [Fact]
    public void TwoSweepsSayNothingOfTheirScatter() =>
    Assert.Empty(Findings(Rehearsed.Plan with { Points = 201, ReferenceSweeps = 2, CoveredSweeps = 2 }, 0.1, -3));

    [Theory]
    [InlineData(1.0, null, "steps too coarse")]
    [InlineData(0.0, -31.0, "flat tops")]
    public void StepsAndFlatTopsAreNotTakenForALooseContact(double step, double? limit, string reason)
    {
        RehearsalPlan plan = Rehearsed.Plan with
        {
            Points = 201,
            ReferenceRippleDb = limit is null ? 0 : 3,
            QuantisationDb = step,
            LimitDbm = limit,
        };
        AnalysisResult result = Rehearsed.Analysed(plan);
        Assert.DoesNotContain(result.Findings, f => f.Code == "non-normal");
        Assert.Contains(reason, result.Checks.Single(c => c.Code == "non-normal").UntestedBecause, StringComparison.Ordinal);
    }

    [Fact]
    public void AFineDisplayDoesNotHideALooseContact() =>
        Assert.Single(Findings(Rehearsed.Plan with { Points = 201, QuantisationDb = 0.1 }, share: 0.02, jump: -2));

    [Fact]
    public void WhereBothRolesJumpTheIntervalsHoldAndItIsANote()
    {
        Finding finding = Assert.Single(Findings(Rehearsed.Plan with { Points = 201 }, share: 0.05, jump: -2));
        Assert.Equal(Severity.Note, finding.Severity);
        Assert.Contains("hold all the same", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhereOneRoleJumpsItMatters()
    {
        var random = new RandomSource(11);
        Campaign campaign = Rehearsed.Changed(Rehearser.Draw(Rehearsed.Plan with { Points = 201 }).Campaign,
            (s, _, level) => s.Role == SweepRole.Reference && random.Uniform() < 0.08 ? level - 2 : level);
        Assert.Equal(Severity.Warning,
            Assert.Single(Analysis.Run(campaign, new AnalysisPlan()).Findings, f => f.Code == "non-normal").Severity);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(5)]
    [InlineData(10)]
    public void TheSkewnessOfOneRoleIsFoundAgainFromItsRests(int sweeps)
    {
        // Reference readings are −(E − 1) for exponential E, of skewness −2; the covered ones scatter by a tenth of that, evenly:
        // −2/(1.01)^1.5.
        var random = new RandomSource(12);
        Campaign campaign =
            Rehearsed.Changed(Rehearser.Draw(Rehearsed.Plan with
            {
                Points = 4001,
                ScatterDb = 0.1,
                ReferenceSweeps = sweeps,
                CoveredSweeps = sweeps,
            }).Campaign,
            (s, _, level) => s.Role == SweepRole.Reference ? -30 + Math.Log(random.Uniform()) + 1 : level);
        AnalysisResult result = Analysis.Run(campaign, new AnalysisPlan());
        double skewness = ScatterSkewness.Of(result.Repeats.Where(g => g.Role != SweepRole.Floor), g => [.. Rests(g)]);
        // Half a thousandth of the readings decides a third moment: 15 % either way.
        Assert.InRange(skewness, -2.3, -1.65);
    }

    [Fact]
    public void FromTheMaterialSkewnessOnLessThanNinetyTwoInAHundredHold()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/skewed-intervals.csv"))
        {
            bool one = row[1] == 0;
            Assert.True(!one || row[2] <= ScatterSkewness.Material || row[3] < 0.92, $"skewness {row[2]} holds {row[3]}");
            Assert.True(!one || row[2] >= ScatterSkewness.Material || row[3] > 0.92, $"skewness {row[2]} holds {row[3]}");
            Assert.True(one || row[3] > 0.945, $"both, skewness {row[2]} holds {row[3]}");
            Assert.Equal(row[2] * (row[0] - 2) / Math.Sqrt(row[0] * (row[0] - 1)), row[4], 1e-12);
        }
    }

    private static IEnumerable<double> Rests(SweepStats.Repeats.RepeatGroup group)
    {
        for (int p = 0; p < group.Points.Length; p++)
        {
            double mean = group.Sweeps.Average(s => s.RestDb[p]);
            foreach (SweepStats.Repeats.RepeatedSweep sweep in group.Sweeps)
            {
                yield return sweep.RestDb[p] - mean;
            }
        }
    }

    private static Finding[] Findings(RehearsalPlan plan, double share, double jump)
    {
        var random = new RandomSource(plan.Seed + 500);
        Campaign campaign = Rehearsed.Changed(Rehearser.Draw(plan).Campaign,
            (s, _, level) => s.Role != SweepRole.Floor && random.Uniform() < share ? level + jump : level);
        return [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = plan.Averaging }).Findings
            .Where(f => f.Code == "non-normal")];
    }
}
