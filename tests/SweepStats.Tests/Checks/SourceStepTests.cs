using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class SourceStepTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { LinearitySourcesDbm = [-10, 0], ScatterDb = 0.1 };

    // The reference 10 dB too high makes 40 dB look like 50.
    [Theory]
    [InlineData(10)]
    [InlineData(3)]
    public void AReferenceAboveWhatTheSourceExplainsIsAFaultAndNothingMeets(double tooHighDb)
    {
        AnalysisResult result = Analysed(tooHighDb);
        Finding told = Assert.Single(result.Findings, f => f.Code == "source-step");
        Assert.Equal(Severity.Fault, told.Severity);
        Assert.Equal(tooHighDb, told.Size!.Value.Value, 0.3);
        Assert.Equal((Trust.Untrustworthy, RequirementOutcome.CannotTell), (result.Verdict.Trust, result.Verdict.Requirement));
    }

    [Fact]
    public void HalfADecibelIsAWarning() =>
    Assert.Equal(Severity.Warning, Assert.Single(Analysed(0.5).Findings, f => f.Code == "source-step").Severity);

    [Fact]
    public void ASourceThatStepsAsStatedIsNotAccused()
    {
        int alarms = Draws.Seeds(100).Count(seed => Analysed(0, seed).Findings.Any(f => f.Code == "source-step"));
        Often.AtMost(alarms, Draws.Of(100), 0.01, whenFull: 3);
    }

    private static AnalysisResult Analysed(double tooHighDb, ulong seed = 1)
    {
        Campaign drawn = Rehearser.Draw(Plan with { Seed = seed }).Campaign;
        Campaign changed =
            drawn with { Sweeps = [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Reference ? s.Shifted(tooHighDb) : s)] };
        return Analysis.Run(changed, new AnalysisPlan
        {
            Averaging = Plan.Averaging,
            SourceDbm = 10,
            Requirement = Requirement.Constant(new Decibels(38)),
        });
    }
}
