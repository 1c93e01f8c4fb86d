using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class SaturationStepTests
{
    private static readonly double[] Sources = [-10, 0, 10];

    [Fact]
    public void HalfADecibelIsFoundFromFiveSweeps()
    {
        int found = Draws.Seeds(60)
            .Count(seed => Finding(seed, 5, source => source == 10 ? 0.5 : 0) is { Severity: Severity.Warning });
        Often.AtLeast(found, Draws.Of(60), 0.95, whenFull: 54);
    }

    [Fact]
    public void AReceiverThatFollowsIsNotAccused()
    {
        Assert.Equal(0, Draws.Seeds(60).Count(seed => Finding(seed, 3, _ => 0) is not null));
        Assert.DoesNotContain(Analysis.Run(Taken(1, 3, Sources, _ => 0), new AnalysisPlan { SourceDbm = 10 }).Findings,
            f => f.Code == "linearity-untested");
        Assert.Contains(Rehearsed.Analysed(Rehearsed.Plan).Findings, f => f.Code == "linearity-untested");
    }

    [Fact]
    public void TheCompressionPointIsInterpolated()
    {
        // 0.5 dB short at 0 dBm and 2.5 dB short at 10 dBm: 1 dB short at 0 + 10·(1 − 0.5)/(2.5 − 0.5) = 2.5 dBm, by hand.
        Finding finding = Finding(1, 5, source => source switch { 0 => 0.5, 10 => 2.5, _ => 0 })!;
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.InRange(finding.Size!.Value.Value, 2.4, 2.6);
        Assert.Matches("1 dB short at about 2\\.[3-7] dBm", finding.Message);
        Assert.Contains("Go down to −10 dBm of the source or less", finding.NextStep, StringComparison.Ordinal);
    }

    [Fact]
    public void SingleSweepsGiveASizeWithoutLimits() =>
        Assert.Contains("without limits", Finding(1, 1, source => source == 10 ? 1.5 : 0)!.Message, StringComparison.Ordinal);

    [Fact]
    public void NoiseAtTheLowestLevelIsNotTakenForOverload() =>
        // At −60 dBm of source the reference lies 10 dB over the floor and reads too high: left out, nothing remains to compare.
        Assert.Null(Analysis.Run(Taken(1, 5, [-60, 10], _ => 0), new AnalysisPlan()).Findings
            .FirstOrDefault(f => f.Code == "saturation-step"));

    // The reference is the lowest level that was taken: whether anything is missing there, nobody tested.
    [Fact]
    public void AReferenceThatNoLowerLevelTestsIsNotCalledSound()
    {
        AnalysisResult result =
            Rehearsed.Analysed(Rehearsed.Plan with
            {
                SourceDbm = 0,
                LinearitySourcesDbm = [10],
                CompressionDbm = -38,
                ReferenceDbm = -30,
            }, new AnalysisPlan { SourceDbm = 0 });
        Finding found = Assert.Single(result.Findings, f => f.Code == "saturation-step");
        Assert.Equal((Severity.Fault, Bias.TooSmall), (found.Severity, found.Bias));
        Assert.Equal(Trust.Untrustworthy, result.Verdict.Trust);
    }

    // Where lower levels show that nothing is missing up to the reference, a shortfall above it is told and limits nothing.
    [Fact]
    public void AShortfallAboveTheReferenceIsANote()
    {
        Campaign taken = Taken(1, 5, [-20, -10, 10], source => source == 10 ? 2 : 0);
        Campaign low = taken with
        {
            Sweeps = [.. taken.Sweeps.Where(s => s.Role != SweepRole.Reference), .. taken.Sweeps.Where(s => s.SourceDbm == -10)
                .Select(s => new Sweep(s.Name, SweepRole.Reference, s.Grid, s.Levels, s.Scale) { SourceDbm = -10 })],
        };
        Finding found = Assert.Single(Analysis.Run(low, new AnalysisPlan()).Findings, f => f.Code == "saturation-step");
        Assert.Equal(Severity.Note, found.Severity);
        Assert.StartsWith("Stay at −10 dBm", found.NextStep, StringComparison.Ordinal);
    }

    // A ratio stays put where the source is stepped; a display in dB that is none follows it. Neither is a fault, and overload is
    // found in both.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void DecibelsAreReadAsTheyMove(bool ratio)
    {
        Assert.Null(Step(Decibels(0)));
        Assert.InRange(Step(Decibels(2))!.Size!.Value.Value, 1.7, 2.3);

        Campaign Decibels(double missing)
        {
            Campaign taken = Taken(1, 5, [-10, 10], source => source == 10 ? missing : 0);
            double Shown(Sweep s, double level) => ratio && s.SourceDbm is { } source ? level - source + 10 : level;
            return taken with
            {
                Sweeps = [.. taken.Sweeps.Select(
                    s => new Sweep(s.Name, s.Role, s.Grid, [.. s.Levels.Select(l => Shown(s, l))], LevelScale.DecibelRatio)
                    { Lot = s.Lot, Specimen = s.Specimen, SourceDbm = s.SourceDbm })],
            };
        }

        static Finding? Step(Campaign campaign) =>
            Analysis.Run(campaign, new AnalysisPlan()).Findings.SingleOrDefault(f => f.Code == "saturation-step");
    }

    private static Finding? Finding(ulong seed, int sweeps, Func<double, double> shortfall) =>
        Analysed(seed, sweeps, shortfall).Findings.SingleOrDefault(f => f.Code == "saturation-step");

    private static AnalysisResult Analysed(ulong seed, int sweeps, Func<double, double> shortfall) =>
        Analysis.Run(Taken(seed, sweeps, Sources, shortfall), new AnalysisPlan());

    // Reference sweeps of campaigns whose reference is set to the source level serve as linearity sweeps: 40 dB are lost on the
    // way.
    private static Campaign Taken(ulong seed, int sweeps, double[] sources, Func<double, double> shortfall)
    {
        Campaign campaign = Rehearser.Draw(Rehearsed.Plan with { Seed = seed }).Campaign;
        IEnumerable<Sweep> linearity = sources.SelectMany(
            (source, i) => Rehearser.Draw(
                Rehearsed.Plan with { Seed = seed + 1000 + (ulong)i, ReferenceDbm = source - 40, ReferenceSweeps = sweeps })
            .Campaign.Sweeps.Where(s => s.Role == SweepRole.Reference)
            .Select(s => new Sweep("linearity", SweepRole.Linearity, s.Grid,
                [.. s.Levels.Select(level => level - shortfall(source))], s.Scale)
            { SourceDbm = source }));
        return campaign with { Sweeps = [.. campaign.Sweeps, .. linearity] };
    }
}
