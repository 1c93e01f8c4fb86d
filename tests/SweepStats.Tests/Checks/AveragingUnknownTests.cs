using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
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
        ShieldingStopDb = 65,
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
            ShieldingStopDb = shielding,
        });
        Assert.Equal(severity, finding.Severity);
        Assert.Contains("peak or quasi-peak detector", finding.Message, StringComparison.Ordinal);
    }

    // The lowest of 30 averages of 20 looks leans down and scatters less than single looks. All covered levels stand 15 dB over
    // the floor and more, and read half a dB too low for their signal.
    [Fact]
    public void TheLowestOfSeveralAveragesIsAWarningFarOverTheFloorToo()
    {
        AnalysisResult taken = Analysis.Run(HeldAverages(30, 20), new AnalysisPlan());
        Finding finding = Assert.Single(taken.Findings, f => f.Code == "averaging-unknown");
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains("may shield less than is claimed", finding.Message, StringComparison.Ordinal);
        Assert.NotEqual(Trust.Trustworthy, taken.Verdict.Trust);
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
            ShieldingStopDb = shielding,
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

    // Floor at -100 dBm, reference at -20, covered 59 dB below it.
    private static Campaign HeldAverages(int held, int looks)
    {
        var random = new RandomSource(2026);
        double[][] Sweeps(double signalDb) => [.. Enumerable.Range(0, 10).Select(_ => (double[])[.. Enumerable.Range(0, 201)
            .Select(_ => -100 + (10 * Math.Log10(Enumerable.Range(0, held).Min(_ => Average(looks, signalDb, random)))))])];
        return Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Floor, Sweeps(double.NegativeInfinity)),
            Rehearsed.Sweeps(SweepRole.Reference, Sweeps(80)), Rehearsed.Sweeps(SweepRole.Covered, Sweeps(80 - 59)));
    }

    // The power of so many looks at a steady signal in noise of power 1: a noncentral and the rest a central chi-square.
    private static double Average(int looks, double signalDb, RandomSource random)
    {
        double steady = random.Normal() + Math.Sqrt(2 * looks * Math.Pow(10, signalDb / 10));
        return ((steady * steady / 2) + random.Gamma(looks - 0.5)) / looks;
    }

    private static Finding Found(RehearsalPlan plan) => Assert.Single(Rehearsed.Analysed(plan, new AnalysisPlan()).Findings, f =>
        f.Code == "averaging-unknown");
}
