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
