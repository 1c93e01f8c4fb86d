using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

/// <summary>Where nothing tells how the receiver averages, the detector is asked for.</summary>
public sealed class AveragingUnknownTests
{
    private static readonly RehearsalPlan Near = Rehearsed.Plan with
    {
        Points = 201,
        ShieldingStartDb = 65,
        ShieldingStopDb = 65
    };

    [Fact]
    public void ReadingsThatLeanAsAveragesDoAreANote()
    {
        Finding finding = Found(Near);
        Assert.Equal(Severity.Note, finding.Severity);
        Assert.Contains("wide enough for power averaging and for log averaging.", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Averaging.Sample, 1)]
    [InlineData(Averaging.Lowest, 30)]
    public void SingleLooksAndTheLowestOfSeveralLookAlikeAndAreAskedAfter(Averaging drawn, double looks)
    {
        Finding finding = Found(Near with { Averaging = drawn, Looks = looks });
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains("minimum hold", finding.Message, StringComparison.Ordinal);
        Assert.Contains("sample detector", finding.NextStep, StringComparison.Ordinal);
        // Lower ends of a minimum hold lie too high up to where the noise of a thousand looks has no say any more: 60 dB over the
        // floor it still has.
        RehearsalPlan far = Near with { Averaging = Averaging.Sample, Looks = 1, ShieldingStartDb = 30, ShieldingStopDb = 30 };
        Assert.Equal(Severity.Warning, Found(far).Severity);
        Assert.Equal(Severity.Note, Found(far with { ReferenceDbm = 20 }).Severity);
    }

    [Theory]
    [InlineData(Averaging.Power, 400, 201, 65, Severity.Warning)]
    [InlineData(Averaging.Power, 400, 201, 30, Severity.Note)]
    [InlineData(Averaging.Power, 20, 9, 65, Severity.Warning)]
    public void ReadingsThatDoNotTellAreAskedAfterWhereItMatters(Averaging drawn, double looks, int points, double shielding,
        Severity severity)
    {
        Finding finding = Found(Near with
        {
            Averaging = drawn,
            Looks = looks,
            Points = points,
            ShieldingStartDb = shielding,
            ShieldingStopDb = shielding
        });
        Assert.Equal(severity, finding.Severity);
        Assert.Contains("peak or quasi-peak detector", finding.Message, StringComparison.Ordinal);
    }

    // 65 dB are a few dB over the floor: the lowest of a thousand looks may hide tens of dB of signal there.
    [Theory]
    [InlineData(Averaging.Unknown, RequirementOutcome.CannotTell)]
    [InlineData(Averaging.Sample, RequirementOutcome.Meets)]
    public void WhatAMinimumHoldCouldOverturnCannotBeTold(Averaging stated, RequirementOutcome outcome)
    {
        RehearsalPlan single = Near with { Averaging = Averaging.Sample, Looks = 1 };
        var plan = new AnalysisPlan { Averaging = stated, Requirement = Requirement.Constant(new Decibels(55)) };
        AnalysisResult result = Rehearsed.Analysed(single, plan);
        Assert.Equal(outcome, result.Verdict.Requirement);
        Assert.Equal(stated == Averaging.Unknown ? ["averaging-unknown"] : [], result.Verdict.OverturnedBy.ToArray());
        AnalysisResult slack = Rehearsed.Analysed(single, plan with { Requirement = Requirement.Constant(new Decibels(10)) });
        Assert.Equal(RequirementOutcome.Meets, slack.Verdict.Requirement);
    }

    // A one-sided 95 % limit: of 201 readings 179 hold the truth at least, 3.9 binomial deviations below what is promised.
    [Theory]
    [InlineData(10, 50)]
    [InlineData(100, 50)]
    [InlineData(100, 60)]
    [InlineData(1000, 40)]
    public void LowerEndsLessTheBiasHoldForAMinimumHold(double looks, double shielding)
    {
        RehearsalPlan plan = Near with
        {
            Averaging = Averaging.Lowest,
            Looks = looks,
            ShieldingStartDb = shielding,
            ShieldingStopDb = shielding
        };
        AnalysisResult taken = Rehearsed.Analysed(plan, new AnalysisPlan());
        Finding finding = Assert.Single(taken.Findings, f => f.Code == "averaging-unknown");
        int Held(bool less) => taken.Curves[0].Readings.Zip(finding.Biases).Count(at =>
            at.First.Evidence.OneSidedLow!.Value.Value - (less ? at.Second.Bias.LowerByDb : 0) <= shielding);
        Assert.Equal(plan.Points, finding.Biases.Length);
        Assert.InRange(Held(less: true), 179, 201);
        Assert.InRange(Held(less: false), 0, 120);
    }

    [Fact]
    public void ADeclaredFloorDoesNotTellTheDetector()
    {
        AnalysisPlan declared = new() { DeclaredFloorDb = -100 };
        Finding finding = Assert.Single(Rehearsed.Analysed(Near with { FloorSweeps = 0 }, declared).Findings, f =>
            f.Code == "averaging-unknown");
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains("declared floor has no scatter", finding.Basis, StringComparison.Ordinal);
    }

    [Fact]
    public void AStatedOrRecognisedAveragingIsNotAskedAfter()
    {
        Assert.DoesNotContain(Rehearsed.Analysed(Near).Findings, f => f.Code == "averaging-unknown");
        Assert.DoesNotContain(Rehearsed.Analysed(Near with { Averaging = Averaging.Peak, Looks = 100 },
            new AnalysisPlan()).Findings, f => f.Code == "averaging-unknown");
    }

    private static Finding Found(RehearsalPlan plan) => Assert.Single(Rehearsed.Analysed(plan, new AnalysisPlan()).Findings, f =>
        f.Code == "averaging-unknown");
}
