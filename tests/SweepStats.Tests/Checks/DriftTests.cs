using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class DriftTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { SweepDeviationDb = 0.1 };

    [Theory]
    [InlineData(true, 1)]
    [InlineData(true, -1)]
    [InlineData(false, 3)] // By order alone the pause between the references before and after is not known.
    public void ADriftOverTheCampaignIsFound(bool timed, double drift)
    {
        int found = Draws.Seeds(60).Count(seed => Drifts(Plan with { Seed = seed, DriftDb = drift }, timed).Any(f =>
            f.Severity == Severity.Warning && f.Message.Contains(drift > 0 ? "rises" : "falls", StringComparison.Ordinal)
                && f.Size!.Value.Value > 0.4 * Math.Abs(drift) && f.Size!.Value.Value < 1.5 * Math.Abs(drift)));
        Often.AtLeast(found, Draws.Of(60), 0.95, whenFull: 54);
    }

    [Fact]
    public void ASourceThatWarmsUpIsFound()
    {
        // Without floor sweeps, during which it would have warmed up already.
        RehearsalPlan cold = Plan with { FloorSweeps = 0, DriftDb = 1, DriftShape = DriftShape.WarmUp };
        int found = Draws.Seeds(60).Count(seed => Drifts(cold with { Seed = seed }, true).Length > 0);
        Often.AtLeast(found, Draws.Of(60), 0.95, whenFull: 54);
    }

    [Theory]
    [InlineData(3, 0.1, true)]
    [InlineData(5, 0.1, false)]
    [InlineData(5, 0.5, true)]
    [InlineData(10, 0.5, false)]
    public void ScatterWithoutTrendIsLeftAlone(int sweeps, double deviation, bool timed)
    {
        int alarms =
            Draws.Seeds(100)
                .Count(seed =>
                    Drifts(Plan with
                    {
                        Seed = seed,
                        SweepDeviationDb = deviation,
                        ReferenceSweeps = sweeps,
                        CoveredSweeps = sweeps,
                    }, timed).Length > 0);
        // By time one test of 3 %, by order two.
        Often.AtMost(alarms, Draws.Of(100), timed ? 0.03 : 0.06, whenFull: 13);
    }

    [Fact]
    public void AReferenceThatShiftedByMoreThanThreeDecibelsIsAFault()
    {
        // Five floor sweeps, a reference, three covered, a reference: four ninths of the drift lie between the references.
        Finding fault = Assert.Single(Drifts(Plan with { DriftDb = 8, ReferenceSweeps = 2, CoveredSweeps = 3 }, false));
        Assert.Equal((Severity.Fault, SweepRole.Reference), (fault.Severity, fault.Role));
        Assert.InRange(fault.Size!.Value.Value, 3.2, 3.9);
        Assert.Contains("IEEE Std 299-2006", fault.Basis, StringComparison.Ordinal);
        Assert.Empty(Drifts(Plan with { DriftDb = 5.5, ReferenceSweeps = 2, CoveredSweeps = 3 }, false));
    }

    [Fact]
    public void ASpecimenThatShieldsMoreThanTheOneBeforeIsNoDrift() =>
        Assert.Empty(
            Drifts(Plan with { SpecimensPerLot = 4, SpecimenDeviationDb = 5, Placements = 2, PlacementDeviationDb = 1 }, true));

    [Fact]
    public void TheSizeIsThatOfTheWholeDay()
    {
        // Without scatter the line is the drift itself: 2 dB from the first sweep of the campaign, a floor sweep, to the last;
        // the first reference sweep is the sixth of fifteen.
        RehearsalPlan still = Rehearsed.Plan with { ScatterDb = 0, DriftDb = 2, Looks = 1e6, Points = 201 };
        Finding finding = Assert.Single(Drifts(still, true));
        Assert.Equal(2 * 9 / 14.0, finding.Size!.Value.Value, 0.01);
    }

    [Fact]
    public void AnOddSweepAtTheEndOfTheDayIsNoDrift()
    {
        int alarms =
            Draws.Seeds(60)
                .Count(seed =>
                    Drifts(Plan with
                    {
                        Seed = seed,
                        OddSweeps = [new SweepStats.Rehearsal.OddSweep(SweepRole.Reference, 5, 1.5)],
                    }, true).Length > 0);
        Often.AtMost(alarms, Draws.Of(60), 0.03, whenFull: 6);
    }

    [Fact]
    public void RanksGoByTheClockNotByTheOrderOfTheFiles()
    {
        Finding forth = Assert.Single(Drifts(Rehearsed.Plan with { DriftDb = 2, Points = 201 }, true));
        Assert.Contains("S = 10,", forth.Basis, StringComparison.Ordinal);
        Campaign campaign = Dated(Rehearser.Draw(Rehearsed.Plan with { DriftDb = 2, Points = 201 }).Campaign);
        Finding back = Assert.Single(Drifts(campaign with { Sweeps = [.. campaign.Sweeps.Reverse()] }));
        Assert.Equal(forth.Basis, back.Basis);
    }

    private static Finding[] Drifts(RehearsalPlan plan, bool timed)
    {
        Campaign campaign = Rehearser.Draw(plan).Campaign;
        return Drifts(timed ? Dated(campaign) : campaign);
    }

    private static Finding[] Drifts(Campaign campaign) =>
        [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power }).Findings.Where(f => f.Code == "drift")];

    private static Campaign Dated(Campaign campaign)
    {
        var start = new DateTimeOffset(2026, 10, 5, 8, 0, 0, TimeSpan.Zero);
        return campaign with
        {
            Sweeps = [.. campaign.Sweeps.Select((s, i) =>
                new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale) { Lot = s.Lot, Specimen = s.Specimen,
                    Placement = s.Placement, TakenAt = start.AddMinutes(2 * i) })],
        };
    }
}
