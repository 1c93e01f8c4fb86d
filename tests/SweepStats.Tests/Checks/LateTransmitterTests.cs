using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class LateTransmitterTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        SpecimensPerLot = 3,
        Placements = 2,
        ReferenceRippleDb = 4,
        SpecimenDeviationDb = 0.5,
    };

    private static readonly AnalysisPlan Power = new() { Averaging = Averaging.Power };

    // fixtures/oracles/wrong-campaigns.R: at 12 and 30 MHz; and a null that is the reference's own.
    [Theory]
    [InlineData("transmitter-after-floor", true)]
    [InlineData("null-of-the-reference", false)]
    [InlineData("clean", false)]
    [InlineData("heard-at-a-third", false)]
    public void WhatRLetTransmitAfterTheFloorIsAskedAbout(string drawn, bool isAsked)
    {
        Finding? told = Analysis.Run(DrawnByR.Campaign(drawn), Power).Findings
            .SingleOrDefault(f => f.Code == "late-transmitter");
        Assert.Equal(isAsked ? [12e6, 30e6] : [], told?.Where.Select(w => w.Start.Value) ?? []);
        Assert.Equal(isAsked, told?.Message.StartsWith("At 2 of 41 frequencies the covered level stands alone, up to 2",
            StringComparison.Ordinal) == true);
    }

    // The cloth shields 40 dB, and fails 30 dB only where something else was received.
    [Theory]
    [InlineData(SweepTaking.Once, RequirementOutcome.CannotTell)]
    [InlineData(SweepTaking.BeforeAndAfter, RequirementOutcome.Fails)]
    public void WhatFailsByItAloneCannotBeTold(SweepTaking floor, RequirementOutcome outcome)
    {
        foreach (ulong seed in Draws.Seeds(20))
        {
            Campaign raised = Raised(Plan with { Seed = seed }, 15, _ => true, 30) with { FloorTaking = floor };
            AnalysisResult result = Analysis.Run(raised, Power with { Requirement = Requirement.Constant(new Decibels(30)) });
            Assert.Equal(outcome, result.Verdict.Requirement);
            Assert.Equal(outcome == RequirementOutcome.CannotTell ? Severity.Warning : Severity.Note,
                result.Findings.Single(f => f.Code == "late-transmitter").Severity);
        }
    }

    // It may spill into the frequencies beside it; behind one specimen of three it is a hole of that one.
    [Theory]
    [InlineData("A01 A02 A03", 15, true, 30)]
    [InlineData("A01 A02 A03", 15, true, 29, 30, 31)]
    [InlineData("A01 A02", 15, true, 30)]
    [InlineData("A01", 15, false, 30)]
    [InlineData("A01 A02 A03", 4, false, 30)]
    [InlineData("A01 A02 A03", 15, false, 27, 28, 29, 30, 31, 32, 33, 34)]
    public void ItStandsAloneBehindMostSpecimens(string specimens, double byDb, bool isAsked, params int[] points) =>
        Assert.Equal(isAsked, IsAsked(Analysis.Run(
            Raised(Plan, byDb, s => specimens.Contains(s.Specimen!, StringComparison.Ordinal), points), Power)));

    [Theory]
    [InlineData(19, "fewer than 20 frequencies have no sides to speak of")]
    [InlineData(20, null)]
    public void ItTakesTwentyFrequencies(int points, string? reason) => Assert.Equal(reason,
        Rehearsed.Analysed(Plan with { Points = points }).Checks.Single(c => c.Code == "late-transmitter").UntestedBecause);

    // Cloth of any kind, steps between lots, and cloth that sinks into the floor.
    [Theory]
    [InlineData(40, 40, 0)]
    [InlineData(20, 60, 8)]
    [InlineData(60, 80, 4)]
    [InlineData(75, 75, 2)]
    public void CleanCampaignsAreNotAccused(double startDb, double stopDb, double rippleDb) =>
        Assert.Equal(0, Draws.Seeds(60).Count(seed => IsAsked(Rehearsed.Analysed(Plan with
        {
            Seed = seed,
            ShieldingStartDb = startDb,
            ShieldingStopDb = stopDb,
            ReferenceRippleDb = rippleDb,
            LotSteps = [new LotStep("A", new Decibels(10), new FrequencyBand(new Hertz(200e6), new Hertz(400e6)))],
        }))));

    private static bool IsAsked(AnalysisResult result) => result.Findings.Any(f => f.Code == "late-transmitter");

    private static Campaign Raised(RehearsalPlan plan, double byDb, Func<Sweep, bool> where, params int[] points) =>
        Rehearsed.Changed(Rehearser.Draw(plan).Campaign,
            (s, f, level) => s.Role == SweepRole.Covered && where(s) && points.Contains(f) ? level + byDb : level);
}
