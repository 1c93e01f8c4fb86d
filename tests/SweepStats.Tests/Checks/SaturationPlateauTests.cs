using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class SaturationPlateauTests
{
    private static readonly RehearsalPlan Rippled = Rehearsed.Plan with { Points = 401, ReferenceRippleDb = 3 };

    [Theory]
    [InlineData(0)]
    [InlineData(0.01)]
    [InlineData(0.1)]
    public void ClippedTopsOverOneInAHundredFrequenciesAreFound(double step)
    {
        int found = Draws.Seeds(40)
            .Count(seed => Found(Clipped(Rippled with { Seed = seed, QuantisationDb = step }, share: 0.01), SweepRole.Reference));
        Often.AtLeast(found, Draws.Of(40), 0.95, whenFull: 36);
    }

    [Theory]
    [InlineData(201, 5)]
    [InlineData(201, 1)]
    [InlineData(1001, 5)]
    public void ClippedReadingsThatScatterPartsFromEachOtherAreFound(int points, int sweeps)
    {
        // The limit is the level that the highest 1 % of the true reference passes: sweeps reach it here and there.
        RehearsalPlan plan = Rippled with { Points = points, ReferenceSweeps = sweeps, SweepDeviationDb = 0.1 };
        double[] still =
            [.. Rehearser.Draw(plan with { ScatterDb = 0, SweepDeviationDb = 0, Looks = 1e6 }).Campaign.Sweeps.First(
                s => s.Role == SweepRole.Reference).Levels.OrderDescending()];
        int found = Draws.Seeds(40)
            .Count(seed =>
                Found(Rehearser.Draw(plan with { Seed = seed, LimitDbm = still[points / 100] }).Campaign, SweepRole.Reference));
        Often.AtLeast(found, Draws.Of(40), 0.95, whenFull: 36);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(0, 5)]
    [InlineData(0.01, 5)]
    [InlineData(0.1, 5)]
    [InlineData(1, 3)]
    public void CleanSweepsHaveNoPlateauWhateverTheDisplay(double step, int sweeps)
    {
        int alarms = Draws.Seeds(40).Count(seed =>
            Rehearsed.Analysed(Rippled with
            {
                Seed = seed,
                QuantisationDb = step,
                ReferenceSweeps = sweeps,
                CoveredSweeps = sweeps,
                FloorSweeps = sweeps,
                Points = 161,
            }).Findings.Any(f => f.Code == "saturation-plateau"));
        Assert.Equal(0, alarms);
    }

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.1)]
    [InlineData(1)]
    public void ASmoothMaximumOnASteppedDisplayIsNone(double step)
    {
        // Without scatter, all sweeps alike: the display's own steps are the longest there can be.
        double[] Curve(double shift) =>
            [.. Enumerable.Range(0, 301).Select(i => Math.Round((shift - (0.0008 * (i - 150) * (i - 150))) / step) * step)];
        Campaign campaign = Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Floor, [.. Enumerable.Range(0, 3).Select(j => Curve(-100 - j))]),
            Rehearsed.Sweeps(SweepRole.Reference, [.. Enumerable.Range(0, 3).Select(j => Curve(-20 + (j * step)))]),
            Rehearsed.Sweeps(SweepRole.Covered, [.. Enumerable.Range(0, 3).Select(j => Curve(-60 + (j * step)))]));
        Assert.DoesNotContain(Analysis.Run(campaign, new AnalysisPlan()).Findings, f => f.Code == "saturation-plateau");
    }

    [Fact]
    public void ThePlateauIsNamedWithItsFrequenciesAndLevel()
    {
        Campaign clipped = Clipped(Rippled, share: 0.1);
        Finding finding = Assert.Single(Analysis.Run(clipped, new AnalysisPlan()).Findings, f => f.Code == "saturation-plateau");
        Assert.Equal((Severity.Fault, SweepRole.Reference), (finding.Severity, finding.Role));
        Assert.NotEmpty(finding.Where);
        Assert.Contains("too small", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AReferenceThatIsClippedEverywhereIsFound()
    {
        RehearsalPlan plan = Rehearsed.Plan with { LimitDbm = Rehearsed.Plan.ReferenceDbm - 3 };
        Finding finding = Assert.Single(Rehearsed.Analysed(plan).Findings, f => f.Code == "saturation-plateau");
        Assert.Equal((Severity.Fault, SweepRole.Reference), (finding.Severity, finding.Role));
        FrequencyBand everywhere = Assert.Single(finding.Where);
        Assert.Equal((30e6, 1e9), (everywhere.Start.Value, everywhere.Stop.Value));
    }

    [Theory]
    [InlineData(0, LevelScale.DecibelRatio, false)]
    [InlineData(-3, LevelScale.DecibelRatio, true)]
    [InlineData(0, LevelScale.DecibelMilliwatts, true)]
    public void AReferenceDividedByItselfIsNoPlateau(double level, LevelScale scale, bool found)
    {
        Campaign drawn =
            Rehearsed.Changed(Rehearser.Draw(Rehearsed.Plan).Campaign, (s, _, l) => s.Role == SweepRole.Reference ? level : l);
        Campaign campaign =
            drawn with
            {
                Sweeps =
                [.. drawn.Sweeps.Select(
                    s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, scale) { Lot = s.Lot, Specimen = s.Specimen })],
            };
        Assert.Equal(found, Found(campaign, SweepRole.Reference));
    }

    [Fact]
    public void SweepsThatAreAllFlatSayNothing()
    {
        double[] Flat(double level) => [.. Enumerable.Repeat(level, 61)];
        Campaign campaign = Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Floor, Flat(-100), Flat(-101)),
            Rehearsed.Sweeps(SweepRole.Reference, Flat(-20), Flat(-21)),
            Rehearsed.Sweeps(SweepRole.Covered, Flat(-60), Flat(-61)));
        Assert.False(Found(campaign, SweepRole.Reference));
    }

    private static bool Found(Campaign campaign, SweepRole role) =>
        Analysis.Run(campaign, new AnalysisPlan()).Findings.Any(f => f.Code == "saturation-plateau" && f.Role == role);

    // The level that a share of the first reference sweep's readings exceed is the receiver's limit in all of them.
    private static Campaign Clipped(RehearsalPlan plan, double share)
    {
        Campaign campaign = Rehearser.Draw(plan).Campaign;
        double[] mean = [.. Enumerable.Range(0, plan.Points)
            .Select(f => campaign.Sweeps.Where(s => s.Role == SweepRole.Reference).Average(s => s.Levels[f]))];
        double limit = mean.Order().ElementAt((int)(plan.Points * (1 - share)) - 1) - 0.5;
        return Rehearsed.Changed(campaign, (s, _, level) => s.Role == SweepRole.Reference ? Math.Min(level, limit) : level);
    }
}
