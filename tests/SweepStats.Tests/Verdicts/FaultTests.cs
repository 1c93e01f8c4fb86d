using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Verdicts;

/// <summary>
/// What findings do to decisions: a fault forbids them, several doubts add up, a specimen known from below is no value.
/// </summary>
public sealed class FaultTests
{
    private static readonly Finding Plain =
        new() { Code = "x", Severity = Severity.Fault, Message = "m", Basis = "b", NextStep = "s" };

    private static readonly AnalysisResult Drawn = Rehearsed.Analysed(Rehearsed.Plan with { ScatterDb = 0.01 });

    [Fact]
    public void AFaultThatDoesNotSayHowFarItReachesForbidsEveryDecision()
    {
        Assert.Equal(RequirementOutcome.Meets, Outcome(30));
        Assert.Equal(RequirementOutcome.CannotTell, Outcome(30, Plain));
        Assert.Equal(RequirementOutcome.CannotTell, Outcome(50, Plain));
        Assert.Equal(RequirementOutcome.Meets, Outcome(30, Plain with { Severity = Severity.Warning }));
        // Too small a shielding overturns no "meets".
        Assert.Equal(RequirementOutcome.Meets, Outcome(30, Plain with { Bias = Bias.TooSmall }));
        Assert.Equal(RequirementOutcome.CannotTell, Outcome(50, Plain with { Bias = Bias.TooSmall }));
    }

    // An overloaded reference shows too little: the figures meet all the same, and nobody is told so.
    [Fact]
    public void UnderAFaultNothingIsHandedOnAsMet()
    {
        Finding small = Plain with { Bias = Bias.TooSmall };
        Verdict drawn = Judge.Of([small], Drawn.Curves, Rule(30), []), relied = drawn.AsRelied();
        Assert.Equal((RequirementOutcome.Meets, RequirementOutcome.CannotTell),
            (drawn.Requirement!.Value, relied.Requirement!.Value));
        SpecimenOutcome specimen = Assert.Single(relied.Specimens);
        Assert.Equal((RequirementOutcome.CannotTell, 0), (specimen.Outcome, specimen.Count(RequirementOutcome.Meets)));
        Assert.All(specimen.Frequencies, d => Assert.Null(d!.Probability));
        Assert.Equal(RequirementOutcome.Fails, relied.Relied(RequirementOutcome.Fails));
        Verdict limited = Judge.Of([small with { Severity = Severity.Warning }], Drawn.Curves, Rule(30), []);
        Assert.Same(limited, limited.AsRelied());
    }

    // 3 dB to spare: 2 dB overturn nothing, twice 2 dB do.
    [Fact]
    public void SeveralDoubtsMayComeTrueTogether()
    {
        Finding two = Plain with { Severity = Severity.Warning, Bias = new Bias(2, 2) };
        Assert.Equal(RequirementOutcome.Meets, Outcome(37, two));
        Assert.Equal(RequirementOutcome.CannotTell, Outcome(37, two, two with { Code = "y" }));
        Assert.Equal(RequirementOutcome.Fails, Outcome(43, two));
        Assert.Equal(RequirementOutcome.CannotTell, Outcome(43, two, two with { Code = "y" }));
    }

    // Both lots end in the noise at −100 dBm, and nobody knows it: 90 and 100 dB read the same.
    [Fact]
    public void SingleSweepsWithoutAFloorMakeNoLotsAlike()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with
        {
            FloorSweeps = 0,
            CoveredSweeps = 1,
            ReferenceSweeps = 1,
            Lots = 2,
            SpecimensPerLot = 3,
            ShieldingStartDb = 90,
            ShieldingStopDb = 90,
        });
        Assert.Equal(0, result.Lots.Whole.ClearShare);
        Assert.Empty(result.Lots.Whole.Pairs);
    }

    // The plate at 30 dB less than the reference hides the leakage; it is no test of it.
    [Fact]
    public void APlateAtAnotherLevelTestsNothing()
    {
        Campaign campaign =
            Rehearser.Draw(Rehearsed.Plan with
            {
                PlateSweeps = 5,
                PlateDb = 75,
                SourceDbm = 10,
                ShieldingStartDb = 10,
                ShieldingStopDb = 10,
            }).Campaign;
        Assert.DoesNotContain(UntestedDoubt.Leakage, Analysed(campaign, 10).Verdict.Untested);
        Finding told = Assert.Single(Analysed(campaign, -20).Findings, f => f.Code == "settings-changed");
        Assert.Equal(SweepRole.Plate, told.Role);
        Assert.Contains(UntestedDoubt.Leakage, Analysed(campaign, -20).Verdict.Untested);

        static AnalysisResult Analysed(Campaign campaign, double plateDbm) => Analysis.Run(
            campaign with
            {
                Sweeps = [.. campaign.Sweeps.Select(s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale)
                    { Lot = s.Lot, Specimen = s.Specimen, Placement = s.Placement,
                        SourceDbm = s.Role == SweepRole.Plate ? plateDbm : 10 })],
            },
            new AnalysisPlan { Averaging = Averaging.Power });
    }

    private static RequirementOutcome Outcome(double required, params ImmutableArray<Finding> findings) => Judge.Of(
        findings, Drawn.Curves, Rule(required), []).Requirement!.Value;

    private static DecisionRule Rule(double required) =>
        new(Requirement.Constant(new Decibels(required)), Confidence.NinetyFive, default);
}
