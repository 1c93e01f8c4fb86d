using SweepStats.Checks;
using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class DeadFloorTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { ReferenceRippleDb = 3 };

    [Fact]
    public void ADeadFloorIsNoFloorAndAllIsKnownFromBelowOnly()
    {
        AnalysisResult result = With(_ => -140);
        Finding finding = Assert.Single(result.Findings, f => f.Code == "dead-floor");
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.StartsWith("305 of 305 floor readings stand still, most at −140.0 dBm", finding.Message, StringComparison.Ordinal);
        Assert.Null(result.Floor);
        Assert.All(result.Curves[0].Readings, r => Assert.IsType<ShieldingReading.AtLeast>(r));
        Assert.All(result.Curves[0].Readings, r => Assert.Equal(ShieldingState.NoFloor, r.State));
        Assert.Equal(Trust.Untrustworthy, result.Verdict.Trust);
        Assert.Contains(result.Findings,
            f => f.Code == "no-floor" && f.Message.StartsWith("The floor sweeps show no noise", StringComparison.Ordinal));
        Assert.Contains("show no noise", result.Checks.Single(c => c.Code == "ambient").UntestedBecause,
            StringComparison.Ordinal);
    }

    [Fact]
    public void AFloorCutOffFromBelowIsNoFloorEither()
    {
        AnalysisResult result = With(level => Math.Max(-99.6, level));
        Finding finding = Assert.Single(result.Findings, f => f.Code == "dead-floor");
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Contains("cuts the noise off", finding.Message, StringComparison.Ordinal);
        Assert.Contains("Lower the bottom of the display", finding.NextStep, StringComparison.Ordinal);
        Assert.Null(result.Floor);
    }

    [Fact]
    public void AFloorOfWhichLittleIsCutOffStaysWithANote()
    {
        AnalysisResult result = With(level => Math.Max(-101.2, level));
        Assert.Equal(Severity.Note, Assert.Single(result.Findings, f => f.Code == "dead-floor").Severity);
        Assert.NotNull(result.Floor);
    }

    [Fact]
    public void ADeclaredFloorTakesThePlaceOfADeadOne()
    {
        AnalysisResult result = With(_ => -140, new AnalysisPlan { Averaging = Averaging.Power, DeclaredFloorDb = -100 });
        Assert.Equal(FloorSource.Declared, result.Floor!.Source);
        Assert.Equal(Trust.Untrustworthy, result.Verdict.Trust);
    }

    [Fact]
    public void ALiveFloorIsLeftAlone() => Assert.DoesNotContain(With(level => level).Findings, f => f.Code == "dead-floor");

    private static AnalysisResult With(Func<double, double> change, AnalysisPlan? stated = null) => Analysis.Run(
        Rehearsed.Changed(Rehearser.Draw(Plan).Campaign, (s, _, level) => s.Role == SweepRole.Floor ? change(level) : level),
        stated ?? new AnalysisPlan { Averaging = Averaging.Power });
}
