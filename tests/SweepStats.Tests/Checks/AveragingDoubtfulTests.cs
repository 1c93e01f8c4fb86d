using SweepStats.Checks;
using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
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
        AnalysisResult result =
            Rehearsed.Analysed(Near with { Looks = looks, Averaging = looks == 1 ? Averaging.Sample : Averaging.Power },
                new AnalysisPlan { Averaging = stated });
        Assert.Equal(told, result.Findings.Any(f => f is { Code: "averaging-doubtful", Severity: Severity.Warning }));
    }

    [Theory]
    [InlineData(Averaging.Power, Averaging.Lowest, 30, true)]
    [InlineData(Averaging.Log, Averaging.Lowest, 30, true)]
    [InlineData(Averaging.Sample, Averaging.Sample, 1, false)]
    [InlineData(Averaging.Power, Averaging.Power, 2, false)]
    [InlineData(Averaging.Log, Averaging.Log, 3, false)]
    public void AStatedAverageThatScattersLikeSingleLooksIsDoubted(Averaging stated, Averaging drawn, double looks, bool told)
    {
        RehearsalPlan plan = Near with { Points = 201, Averaging = drawn, Looks = looks };
        AnalysisResult result = Rehearsed.Analysed(plan, new AnalysisPlan { Averaging = stated });
        Assert.Equal(told, result.Findings.Any(f => f is { Code: "averaging-doubtful", Severity: Severity.Warning }
            && f.Message.Contains("minimum hold", StringComparison.Ordinal)));
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
        int alarms = Draws.Seeds(100)
            .Count(seed => Rehearsed.Analysed(few with { Seed = seed }).Findings.Any(f => f.Code == "averaging-doubtful"));
        Often.AtMost(alarms, Draws.Of(100), 0.01, whenFull: 4);
    }

    [Fact]
    public void AFloorWithoutScatterIsNoFloor()
    {
        // Each sweep like the others, and along the sweep it rises by a tenth of a dB: noise that was averaged for long on a
        // coarse display.
        Campaign still = Rehearsed.Changed(Rehearser.Draw(Near with { ScatterDb = 0, QuantisationDb = 0.1 }).Campaign,
            (s, f, level) => s.Role == SweepRole.Floor ? (f < 30 ? -100 : -99.9) : level);
        Finding finding = Assert.Single(Analysis.Run(still, new AnalysisPlan { Averaging = Averaging.Sample }).Findings,
            f => f.Code == "averaging-doubtful");
        Assert.Contains("more than 1000 looks", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("MAX HOLD", null, Severity.Warning, Severity.Note)]
    [InlineData("Clear Write", "Positive Peak", Severity.Warning, Severity.Note)]
    [InlineData("Clear Write", "Quasi-peak", Severity.Warning, Severity.Note)]
    [InlineData("Clear Write", "NEGATIVE PEAK", Severity.Fault, Severity.Fault)]
    [InlineData("Min Hold", null, Severity.Fault, Severity.Fault)]
    [InlineData("Average", "RMS", null, null)]
    [InlineData(null, null, null, null)]
    public void TracesThatKeepALookAreQuestionedMostNearTheFloor(string? mode, string? detector, Severity? near, Severity? far)
    {
        Finding? Of(double shielding) => Doubts(Stated(shielding, mode, detector), Averaging.Unknown).SingleOrDefault();
        Assert.Equal(near, Of(65)?.Severity);
        Assert.Equal(far, Of(30)?.Severity);
    }

    [Theory]
    [InlineData("Peak", Severity.Warning)]
    [InlineData("MinPeak", Severity.Fault)]
    public void AKeptLookThatTheCampaignCallsAnAverageIsNamedAsAContradiction(string detector, Severity severity)
    {
        Finding finding = Assert.Single(Doubts(Stated(30, null, detector), Averaging.Power));
        Assert.Equal(severity, finding.Severity);
        Assert.Contains("campaign.toml states \"power\"; the files go before it", finding.Message, StringComparison.Ordinal);
        Assert.Contains(detector, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(65, Severity.Warning)]
    [InlineData(30, Severity.Note)]
    public void AnAverageThatTheFilesCallAnotherIsNamed(double shielding, Severity severity)
    {
        Finding finding = Assert.Single(Doubts(Stated(shielding, null, "RMS"), Averaging.Log));
        Assert.Equal(severity, finding.Severity);
        Assert.Contains("\"log\", the files state \"power\" (RMS)", finding.Message, StringComparison.Ordinal);
        Assert.Empty(Doubts(Stated(shielding, null, "RMS"), Averaging.Power));
    }

    [Theory]
    [InlineData("Peak", Severity.Warning)]
    [InlineData("Neg", Severity.Fault)]
    public void FilesThatDisagreeAreNamedByRole(string covered, Severity severity)
    {
        Campaign campaign = Stated(30, null, "RMS");
        Campaign mixed = campaign with
        {
            Sweeps = [.. campaign.Sweeps.Select(s => s.Role == SweepRole.Covered
            ? s.As(settings: new ReceiverSettings { Detector = covered }) : s)],
        };
        Finding finding = Assert.Single(Doubts(mixed, Averaging.Power));
        Assert.Equal(severity, finding.Severity);
        Assert.Contains($"floor RMS, reference RMS, covered {covered}", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Averaging.Unknown, "")]
    [InlineData(Averaging.Power, "campaign.toml states \"power\", which was not used")]
    public void ARecognisedPeakDetectorIsAWarningWithItsFigures(Averaging stated, string words)
    {
        Finding finding = Assert.Single(Doubts(Rehearser.Draw(Near with
        {
            Points = 201,
            Averaging = Averaging.Peak,
            Looks = 100,
        }).Campaign, stated));
        Assert.Equal(Severity.Warning, finding.Severity);
        Assert.Contains("lean upward", finding.Message, StringComparison.Ordinal);
        Assert.Contains(words, finding.Message, StringComparison.Ordinal);
        Assert.Contains("Skewness of the floor readings", finding.Basis, StringComparison.Ordinal);
    }

    [Fact]
    public void AveragesThatLeanAsTheLowestOfSeveralAreQuestioned()
    {
        var random = new RandomSource(77);
        Campaign campaign = Rehearsed.Changed(Rehearser.Draw(Near with { Points = 201, FloorSweeps = 10 }).Campaign,
            (s, _, level) => s.Role != SweepRole.Floor ? level
            : -100 + (DetectorNoise.DecibelsPerNeper * Math.Log(Enumerable.Range(0, 10).Min(_ => random.Gamma(20) / 20))));
        Assert.Contains("lean further down", Assert.Single(Doubts(campaign, Averaging.Power)).Message, StringComparison.Ordinal);
        Assert.Empty(Doubts(campaign, Averaging.Unknown));
        Finding asked = Assert.Single(Analysis.Run(campaign, new AnalysisPlan()).Findings, f => f.Code == "averaging-unknown");
        Assert.Equal(Severity.Warning, asked.Severity);
        Assert.Contains("lean further down", asked.Message, StringComparison.Ordinal);
    }

    private static Finding[] Doubts(Campaign campaign, Averaging stated) =>
        [.. Analysis.Run(campaign, new AnalysisPlan { Averaging = stated }).Findings.Where(f => f.Code == "averaging-doubtful")];

    private static Campaign Stated(double shielding, string? mode, string? detector)
    {
        Campaign campaign = Rehearser.Draw(Near with { ShieldingStartDb = shielding, ShieldingStopDb = shielding }).Campaign;
        var settings = new ReceiverSettings { TraceMode = mode, Detector = detector };
        return campaign with
        {
            Sweeps =
            [.. campaign.Sweeps.Select(s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale) { Lot = s.Lot,
                Specimen = s.Specimen, Settings = settings })],
        };
    }
}
