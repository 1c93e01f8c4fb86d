using SweepStats.Checks;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class AveragingDoubtfulTests
{
    private static readonly RehearsalPlan Near = Rehearsed.Plan with { ShieldingStartDb = 65, ShieldingStopDb = 65 };

    [Theory]
    [InlineData(Averaging.Sample, 20, true)]
    [InlineData(Averaging.Sample, 3, true)]
    [InlineData(Averaging.Sample, 1, false)]
    [InlineData(Averaging.Power, 20, false)]
    public void SampleReadingsThatWereAveragedContradictThemselves(Averaging stated, double looks, bool told)
    {
        AnalysisResult result = Rehearsed.Analysed(Near with { Looks = looks, Averaging = looks == 1 ? Averaging.Sample : Averaging.Power }, new AnalysisPlan { Averaging = stated });
        Assert.Equal(told, result.Findings.Any(f => f is { Code: "averaging-doubtful", Severity: Severity.Warning }));
    }

    [Theory]
    [InlineData(8, 1)]
    [InlineData(8, 5)]
    [InlineData(20, 2)]
    [InlineData(61, 1)]
    [InlineData(61, 3)]
    public void AFewSingleLooksAreNotCalledAveraged(int points, int sweeps)
    {
        RehearsalPlan few = Near with { Points = points, FloorSweeps = sweeps, Looks = 1, Averaging = Averaging.Sample };
        int alarms = Enumerable.Range(1, 100).Count(seed => Rehearsed.Analysed(few with { Seed = (ulong)seed }).Findings.Any(f => f.Code == "averaging-doubtful"));
        // Three standard deviations are asked for: with 1 of 100 expected, 4 lie 3 binomial deviations above.
        Assert.InRange(alarms, 0, 4);
    }

    [Fact]
    public void AFloorWithoutScatterIsNotSaidToHoldInfinitelyManyLooks()
    {
        // Each sweep like the others, and along the sweep it rises by a tenth of a dB: noise that was averaged for long on a coarse display.
        Campaign still = Rehearsed.Changed(Rehearser.Draw(Near with { ScatterDb = 0, QuantisationDb = 0.1 }).Campaign, (s, f, level) => s.Role == SweepRole.Floor ? (f < 30 ? -100 : -99.9) : level);
        Finding finding = Assert.Single(Analysis.Run(still, new AnalysisPlan { Averaging = Averaging.Sample }).Findings, f => f.Code == "averaging-doubtful");
        Assert.Contains("more than 1000 looks", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("MAX HOLD", null, true)]
    [InlineData("Clear Write", "Positive Peak", true)]
    [InlineData("Clear Write", "NEGATIVE PEAK", false)]
    [InlineData("Clear Write", "Quasi-peak", false)]
    [InlineData("Average", "RMS", false)]
    [InlineData(null, null, false)]
    public void TracesThatKeepTheHighestAreQuestioned(string? mode, string? detector, bool told)
    {
        Finding? Of(double shielding) => Analysis.Run(Stated(shielding, mode, detector), new AnalysisPlan { Averaging = Averaging.Power }).Findings.SingleOrDefault(f => f.Code == "averaging-doubtful");
        Assert.Equal(told ? Severity.Warning : null, Of(65)?.Severity);
        Assert.Equal(told ? Severity.Note : null, Of(30)?.Severity);
    }

    private static Campaign Stated(double shielding, string? mode, string? detector)
    {
        Campaign campaign = Rehearser.Draw(Near with { ShieldingStartDb = shielding, ShieldingStopDb = shielding }).Campaign;
        var settings = new ReceiverSettings { TraceMode = mode, Detector = detector };
        return campaign with { Sweeps = [.. campaign.Sweeps.Select(s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale) { Lot = s.Lot, Specimen = s.Specimen, Settings = settings })] };
    }
}
