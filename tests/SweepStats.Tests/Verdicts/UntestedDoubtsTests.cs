using SweepStats.Rehearsal;
using SweepStats.Sweeps;
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
        Campaign clipped = Rehearsed.Changed(drawn, (s, _, level) => s.Role == SweepRole.Reference ? Math.Min(level, top) : level);
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

    private static UntestedDoubt[] Of(Campaign campaign) =>
        [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = Averaging.Power }).Verdict.Untested];
}
