using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class ForeignFloorTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { Points = 101, ScatterDb = 0.2 };

    // The covered level is all noise; the floor was taken with 20 dB less gain, so that noise looks like a signal far over it.
    [Fact]
    public void NoiseFarOverAFloorOfOtherSettingsIsNoSignal()
    {
        AnalysisResult result = Analysed(Plan with { ShieldingStartDb = 95, ShieldingStopDb = 95 }, floorDb: -20, asked: 85);
        Finding told = Assert.Single(result.Findings, f => f.Code == "foreign-floor");
        Assert.Equal((Severity.Warning, Bias.TooSmall), (told.Severity, told.Bias));
        Assert.Equal(RequirementOutcome.CannotTell, result.Verdict.Requirement);
    }

    // A steady signal 10 dB over the noise, under a floor taken 10 dB too high: too much noise would be taken out.
    [Fact]
    public void ASteadySignalInAFloorThatIsTooHighMeetsNothing()
    {
        AnalysisResult result = Analysed(Plan with { ShieldingStartDb = 60, ShieldingStopDb = 60 }, floorDb: 10, asked: 60.3);
        Assert.Contains(result.Findings, f => f is { Code: "foreign-floor", Severity: Severity.Warning });
        Assert.NotEqual(RequirementOutcome.Meets, result.Verdict.Requirement);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(70)]
    [InlineData(95)]
    public void AFloorOfTheSameSettingsIsNotAccused(double shieldingDb)
    {
        int alarms =
            Draws.Seeds(60)
                .Count(seed => Analysed(Plan with { Seed = seed, ShieldingStartDb = shieldingDb, ShieldingStopDb = shieldingDb },
                    0, 30).Findings.Any(f => f.Code == "foreign-floor"));
        Assert.Equal(0, alarms);
    }

    // What the specimen does by itself scatters too, and so does the reference.
    [Fact]
    public void ScatterOfTheSourceIsNotTakenForNoise() =>
        Assert.DoesNotContain(Analysed(Plan with { ScatterDb = 1.5, ShieldingStartDb = 30, ShieldingStopDb = 30 }, 0,
            20).Findings, f => f.Code == "foreign-floor");

    private static AnalysisResult Analysed(RehearsalPlan plan, double floorDb, double asked)
    {
        Campaign drawn = Rehearser.Draw(plan).Campaign;
        Campaign changed =
            drawn with { Sweeps = [.. drawn.Sweeps.Select(s => s.Role == SweepRole.Floor ? s.Shifted(floorDb) : s)] };
        return Analysis.Run(changed,
            new AnalysisPlan { Averaging = plan.Averaging, Requirement = Requirement.Constant(new Decibels(asked)) });
    }
}
