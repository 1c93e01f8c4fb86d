using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class PlacementEffectTests
{
    private static readonly RehearsalPlan Plan =
        Rehearsed.Plan with { Placements = 3, CoveredSweeps = 2, SpecimensPerLot = 3, SweepDeviationDb = 0.1 };

    [Fact]
    public void PlacementsThatDifferMoreThanSweepsAreANoteWithTheirSpread()
    {
        Finding[] found = [.. Enumerable.Range(1, 40)
            .SelectMany(seed => Effects(Plan with { Seed = (ulong)seed, PlacementDeviationDb = 0.8 }))];
        Assert.InRange(found.Length, 38, 40);
        Assert.All(found, f => Assert.Equal(Severity.Note, f.Severity));
        // Nine placements in three specimens leave six degrees of freedom: the mean of forty deviations lies within 5 % of
        // 0.8·c4(7) = 0.77.
        Assert.InRange(found.Average(f => f.Size!.Value.Value), 0.7, 0.85);
    }

    [Fact]
    public void ASpecimenPlacedOnceMakesItAWarning()
    {
        Campaign campaign = Rehearser.Draw(Plan with { PlacementDeviationDb = 1 }).Campaign;
        Campaign once = campaign with { Sweeps = [.. campaign.Sweeps.Where(s => s.Specimen != "A03" || s.Placement == "p1")] };
        Finding finding = Assert.Single(Analysis.Run(once, new AnalysisPlan()).Findings, f => f.Code == "placement-effect");
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains("1 specimen with one placement", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void PlacementsAlikeAreLeftAlone()
    {
        int alarms = Draws.Seeds(100).Count(seed => Effects(Plan with { Seed = seed, SweepDeviationDb = 0.5 }).Length > 0);
        Often.AtMost(alarms, Draws.Of(100), 0.01, whenFull: 4);
    }

    [Fact]
    public void WithOneSweepAPlacementNothingIsSaid() =>
    Assert.Empty(Effects(Plan with { CoveredSweeps = 1, PlacementDeviationDb = 2 }));

    private static Finding[] Effects(RehearsalPlan plan) =>
        [.. Rehearsed.Analysed(plan).Findings.Where(f => f.Code == "placement-effect")];
}
