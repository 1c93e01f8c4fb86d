using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Tests.Checks;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Verdicts;

public sealed class UntestedDoubtsTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { ReferenceRippleDb = 6 };

    [Fact]
    public void AnOverloadThatIsFoundIsNotSaidToBeUntested()
    {
        Campaign drawn = Rehearser.Draw(Plan).Campaign;
        Assert.Contains(UntestedDoubt.Overload, Of(drawn));
        double top = drawn.Sweeps.Where(s => s.Role == SweepRole.Reference).Max(s => s.Levels.Max()) - 3;
        Campaign clipped =
            Rehearsed.Changed(drawn, (s, _, level) => s.Role == SweepRole.Reference ? Math.Min(level, top) : level);
        AnalysisResult result = Analysis.Run(clipped, new AnalysisPlan { Averaging = Averaging.Power });
        Assert.Contains(result.Findings, f => f.Code == "saturation-plateau");
        Assert.DoesNotContain(UntestedDoubt.Overload, result.Verdict.Untested);
        Assert.Contains(UntestedDoubt.Leakage, result.Verdict.Untested);
    }

    [Fact]
    public void AReferenceOfUnknownTimeIsTakenForAWarningAndNotForAGap()
    {
        Campaign campaign = Rehearser.Draw(Plan).Campaign with { ReferenceTaking = SweepTaking.Unstated };
        AnalysisResult result = Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power });
        Assert.Single(result.Findings, f => f is { Code: "reference-once", Severity: SweepStats.Checks.Severity.Warning });
        Assert.DoesNotContain(UntestedDoubt.Drift, result.Verdict.Untested);
        Assert.Equal(Trust.Limited, result.Verdict.Trust);
    }

    // Linearity sweeps of which nothing says how they stand to the reference show nothing about it.
    [Fact]
    public void LinearityThatSaysNothingOfTheReferenceIsNoTest()
    {
        Campaign drawn = Rehearser.Draw(Plan with { LinearitySourcesDbm = [0, 10] }).Campaign;
        Assert.DoesNotContain(UntestedDoubt.Overload, Of(drawn));
        Campaign unstated = drawn with
        {
            Sweeps = [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Linearity ? s : Rehearsed.Copy(s, s.Levels))],
        };
        Assert.Contains(UntestedDoubt.Overload, Of(unstated));
    }

    // Sweeps that scatter by 0.6 dB as a whole show a shortfall of half a decibel to nobody.
    [Fact]
    public void LinearityThatCouldNotShowWhatMattersIsNoTest()
    {
        double[] offsets = [0.6, -0.6, 0];
        int number = 0;
        Campaign drawn = Rehearser.Draw(Plan with { LinearitySourcesDbm = [0, 10] }).Campaign;
        Campaign loose = drawn with
        {
            Sweeps =
            [
                .. drawn.Sweeps.Select(s => s.Role == SweepRole.Linearity ? s.Shifted(offsets[number++ % offsets.Length]) : s),
            ],
        };
        AnalysisResult result = Analysis.Run(loose, new AnalysisPlan { Averaging = Averaging.Power });
        Assert.DoesNotContain(result.Findings, f => f.Code == "saturation-step");
        Assert.Contains(UntestedDoubt.Overload, result.Verdict.Untested);
    }

    // A drift of one lot leaves open whether the others drifted; a leak goes round all of them.
    [Theory]
    [InlineData("drift", UntestedDoubt.Drift, false)]
    [InlineData("leakage", UntestedDoubt.Leakage, true)]
    public void WhatIsFoundOfOneLotTellsOnlyOfTheSetUp(string code, UntestedDoubt doubt, bool isTold)
    {
        Campaign untimed = Rehearser.Draw(Plan).Campaign with { ReferenceTaking = SweepTaking.Unstated };
        Finding warning = Analysis.Run(untimed, new AnalysisPlan()).Findings.First(f => f.Severity == Severity.Warning);
        Finding all = warning with { Code = code, Specimen = null };
        Assert.True(UntestedDoubts.IsTold(doubt, [all]));
        Assert.Equal(isTold, UntestedDoubts.IsTold(doubt, [all with { Lot = "B" }]));
        Assert.False(UntestedDoubts.IsTold(doubt, [all with { Severity = Severity.Note }]));
    }

    private static UntestedDoubt[] Of(Campaign campaign) =>
        [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power }).Verdict.Untested];
}
