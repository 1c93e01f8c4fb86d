using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class NoLifeTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { ReferenceRippleDb = 3, ShieldingStopDb = 60 };

    [Theory]
    [InlineData(SweepRole.Reference, 0, Severity.Fault)]
    [InlineData(SweepRole.Reference, 0.1, Severity.Fault)]
    [InlineData(SweepRole.Reference, 1, Severity.Warning)]
    [InlineData(SweepRole.Covered, 0.01, Severity.Fault)]
    public void SweepsThatDoNotMoveAreNoReadings(SweepRole role, double step, Severity severity)
    {
        AnalysisResult result = With(Plan with { QuantisationDb = step }, (s, level) => s.Role == role ? -20 : level);
        Finding finding = Assert.Single(result.Findings, f => f.Code == "no-life" && f.Role == role);
        Assert.Equal(severity, finding.Severity);
        Assert.Contains("at all 61 frequencies", finding.Message, StringComparison.Ordinal);
        Assert.True(severity == Severity.Warning || result.Verdict.Trust == Trust.Untrustworthy);
    }

    [Fact]
    public void AReferenceDividedByItselfIsNoFault()
    {
        Campaign campaign = Rehearser.Draw(Plan).Campaign;
        Campaign ratio = campaign with
        {
            Sweeps = [.. campaign.Sweeps.Select(s => new Sweep(s.Name, s.Role, s.Grid,
                [.. s.Levels.Select(l => s.Role == SweepRole.Reference ? 0.0 : l + 30)], LevelScale.DecibelRatio) { Lot = s.Lot,
                    Specimen = s.Specimen })],
        };
        Assert.DoesNotContain(Analysis.Run(ratio, new AnalysisPlan()).Findings, f => f.Code == "no-life");
    }

    [Fact]
    public void CoveredReadingsAtTheBottomOfTheDisplayAreNamed()
    {
        // From −70 dBm at 30 MHz to −90 dBm at 1 GHz, cut off at −83 dBm: from about 290 MHz on.
        AnalysisResult result = With(Plan, (s, level) => s.Role == SweepRole.Covered ? Math.Max(-83, level) : level);
        Finding finding = Assert.Single(result.Findings, f => f.Code == "no-life");
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains("−83.0 dBm", finding.Message, StringComparison.Ordinal);
        Assert.All(finding.Where, band => Assert.InRange(band.Start.Value, 200e6, 1e9));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(0.1)]
    [InlineData(1)]
    public void LiveSweepsAreLeftAlone(double step) => Assert.All(Enumerable.Range(1, 15), seed =>
        Assert.DoesNotContain(Rehearsed.Analysed(
            Plan with { Seed = (ulong)seed, QuantisationDb = step, ShieldingStopDb = 90 }).Findings, f => f.Code == "no-life"));

    [Fact]
    public void AFewFrequenciesCannotTell()
    {
        AnalysisResult result = With(Plan with { Points = 11 }, (s, level) => s.Role == SweepRole.Reference ? -20 : level);
        Assert.DoesNotContain(result.Findings, f => f.Code == "no-life");
        Assert.Contains("12 frequencies", result.Checks.Single(c => c.Code == "no-life").UntestedBecause,
            StringComparison.Ordinal);
    }

    private static AnalysisResult With(RehearsalPlan plan, Func<Sweep, double, double> change) =>
        Analysis.Run(Rehearsed.Changed(Rehearser.Draw(plan).Campaign, (s, _, level) => change(s, level)),
            new AnalysisPlan { Averaging = Averaging.Power });
}
