using SweepStats.Bands;
using SweepStats.Planning;
using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Tests.Planning;

public sealed class PilotRequirementTests
{
    // 40 dB of shielding everywhere, 30 dB asked at the start of the band and 38 dB at its stop.
    private static readonly AnalysisResult Pilot = Rehearsed.Analysed(Rehearsed.Plan, new AnalysisPlan
    {
        Requirement = Requirement.Line([new(new Hertz(30e6), new Decibels(30)), new(new Hertz(1e9), new Decibels(38))]),
        GuardBand = new Decibels(1.5),
    });

    [Fact]
    public void TheClaimIsWhatIsAskedWhereThereIsLeastToSpare()
    {
        // Limits scatter by tenths of a dB, the requirement rises 8 dB over 60 steps: the last frequencies have least to spare.
        PilotRequirement asked = PilotRequirement.Of(Pilot.Curves, Pilot.Plan.Rule)!;
        Assert.InRange(asked.At.Value, 700e6, 1e9);
        Assert.Equal(Pilot.Plan.Requirement!.At(asked.At)!.Value.Value + 1.5, asked.ClaimDb, 1e-12);
    }

    [Fact]
    public void WithoutARequirementNothingIsClaimed() => Assert.Null(PilotRequirement.Of(Pilot.Curves, null));

    [Fact]
    public void ARequirementOutsideTheBandAsksNothing()
    {
        var elsewhere = Requirement.Line([new(new Hertz(2e9), new Decibels(30)), new(new Hertz(3e9), new Decibels(38))]);
        Assert.Null(PilotRequirement.Of(Pilot.Curves, new DecisionRule(elsewhere, new(0.95), new Decibels(0))));
    }

    [Fact]
    public void AFrequencyWithoutALimitHasLeastToSpare()
    {
        // One covered sweep gives no limit anywhere; most is asked at the stop.
        AnalysisResult single = Rehearsed.Analysed(Rehearsed.Plan with { CoveredSweeps = 1 }, Pilot.Plan);
        Assert.Equal(1e9, PilotRequirement.Of(single.Curves, single.Plan.Rule)!.At.Value, 1e3);
    }
}
