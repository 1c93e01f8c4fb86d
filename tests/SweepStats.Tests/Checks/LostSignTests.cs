using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Tests.Checks;

public sealed class LostSignTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with
    {
        SpecimensPerLot = 2,
        Lots = 2,
        CoveredSweeps = 3,
        ReferenceRippleDb = 3,
    };

    // fixtures/oracles/wrong-campaigns.R.
    [Fact]
    public void SweepsThatRWroteWithoutSignsAreToldFirst()
    {
        AnalysisResult result = Analysis.Run(DrawnByR.Campaign("lost-sign"), new AnalysisPlan { Averaging = Averaging.Power });
        Assert.All(result.Findings.Take(3), f =>
            Assert.Equal(("lost-sign", Severity.Fault, true), (f.Code, f.Severity, f.Misleads)));
        Assert.StartsWith("Give the levels of A/s1 their minus sign again", result.Findings[0].NextStep,
            StringComparison.Ordinal);
        Assert.Equal((Trust.Untrustworthy, false), (result.Verdict.Trust, result.MayPrefer));
    }

    [Theory]
    [InlineData("floor", "the floor")]
    [InlineData("covered", "A/A01 A/A02 B/B01 B/B02")]
    [InlineData("covered A02", "A/A02")]
    [InlineData("floor reference", "the floor|the reference")]
    [InlineData("covered floor", "the floor|A/A01|A/A02|B/B01|B/B02")]
    [InlineData("covered reference", "the reference|A/A01|A/A02|B/B01|B/B02")]
    [InlineData("floor reference covered", "the floor|the reference|A/A01|A/A02|B/B01|B/B02")]
    public void WhateverLostItIsNamed(string lost, string named)
    {
        Finding[] told = [.. Without(lost).Findings.Where(f => f.Code == "lost-sign")];
        Assert.All(told, f => Assert.Equal(Severity.Fault, f.Severity));
        Assert.Equal(
            named.Split(' ', '|').Where(w => w != "the"), told
                .Select(f => f.Specimen?.ToString() ?? f.Role!.Value.ToString().ToLowerInvariant()));
    }

    // The highest reading of the reference is −0.05 dBm, which reads 0.05 dBm without its sign.
    [Fact]
    public void AReadingJustBelowZeroLosesItTooWithTheOthers()
    {
        Campaign drawn = Rehearser.Draw(Plan).Campaign;
        double up = -0.05 - drawn.Sweeps.Where(s => s.Role == SweepRole.Reference).Max(s => s.Levels.Max());
        Campaign without = Rehearsed.Changed(
            drawn, (s, _, level) => s.Role == SweepRole.Floor ? level + up : -(level + up));
        AnalysisResult result = Analysis.Run(without, new AnalysisPlan { Averaging = Averaging.Power });
        Assert.Contains(result.Findings, f => f is { Code: "lost-sign", Role: SweepRole.Reference });
    }

    // One file of several: the mean of the kind hides it, and the range seems to be what is wrong.
    [Theory]
    [InlineData(SweepRole.Floor)]
    [InlineData(SweepRole.Reference)]
    [InlineData(SweepRole.Covered)]
    public void ASingleFileIsNamedAndNothingIsSaidOfTheRange(SweepRole role)
    {
        AnalysisPlan asking = new() { Averaging = Averaging.Power, Requirement = Requirement.Constant(new Decibels(60)) };
        foreach (ulong seed in Draws.Seeds(20))
        {
            Taken drawn = Taken.With(Plan with { Seed = seed, Placements = 2 }, asking);
            Sweep one = drawn.First(role);
            AnalysisResult result = drawn.But(s => s == one ? s.As(levels: [.. s.Levels.Select(l => -l)]) : s).Analysed();
            Finding told = Assert.Single(result.Findings, f => f.Code == "lost-sign");
            Assert.Equal((result.Findings[0], Severity.Fault, one.Name, true),
                (told, told.Severity, told.Sweep, told.Misleads));
            Assert.StartsWith($"Give the levels of {one.Name} their minus sign again, as the display showed them, or take",
                told.NextStep, StringComparison.Ordinal);
            Assert.DoesNotContain(result.Findings, f => (f.Code is "under-ranged" or "capped" or "stray-placement")
                && (f.Specimen is null || role != SweepRole.Covered || f.Specimen == SpecimenName.Of(one)));
        }
    }

    // The range of the others was looked at all the same.
    [Theory]
    [InlineData(SweepRole.Covered, null, "levels of A/A01 are wrong first (lost-sign)")]
    [InlineData(SweepRole.Reference, "levels are wrong first (lost-sign)", null)]
    public void WhatIsNotSaidOfTheRangeIsNamed(SweepRole role, string? untested, string? left)
    {
        Taken drawn = Taken.With(Plan with { Placements = 2 });
        Sweep one = drawn.First(role);
        AnalysisResult result = drawn.But(s => s == one ? s.As(levels: [.. s.Levels.Select(l => -l)]) : s).Analysed();
        Assert.All(result.Checks.Where(c => c.Code is "under-ranged" or "capped"),
            c => Assert.Equal((untested, left), (c.UntestedBecause, c.LeftBecause)));
    }

    // 30 dBm and not −30 dBm: all is in order but the height.
    [Fact]
    public void AReferenceWithoutItsSignIsAskedAbout()
    {
        AnalysisResult result = Without("reference");
        Assert.Equal(("lost-sign", Severity.Warning), (result.Findings[0].Code, result.Findings[0].Severity));
        Assert.False(result.MayPrefer);
    }

    // −12 dBm written as 12 dBm is no height by itself; more than the source sends is.
    [Theory]
    [InlineData(5, true)]
    [InlineData(15, false)]
    public void AReferenceAboveWhatIsSentIsAskedAbout(double sourceDbm, bool isAsked)
    {
        Taken lost = Taken.With(Plan with { ReferenceDbm = -12 })
            .But(s => s.Role == SweepRole.Reference ? s.As(levels: [.. s.Levels.Select(l => -l)]) : s);
        AnalysisResult result = Analysis.Run(lost.Campaign, lost.Stated with { SourceDbm = sourceDbm });
        Assert.Equal(isAsked, result.Findings.Any(f => f.Code == "lost-sign"));
        Assert.DoesNotContain(
            Analysis.Run(Taken.With(Plan with { ReferenceDbm = -12 }).Campaign,
                lost.Stated with { SourceDbm = sourceDbm }).Findings,
            f => f.Code == "lost-sign");
    }

    // Much power, an amplifier before the receiver, poor cloth: positive levels are no fault.
    [Theory]
    [InlineData(15, 40)]
    [InlineData(30, 0)]
    [InlineData(30, 20)]
    [InlineData(40, 45)]
    [InlineData(-30, 0)]
    [InlineData(2, 3)]
    public void CleanCampaignsAreNotAccused(double referenceDbm, double shieldingDb)
    {
        RehearsalPlan plan = Plan with
        {
            Points = 21,
            ReferenceDbm = referenceDbm,
            ShieldingStartDb = shieldingDb,
            ShieldingStopDb = shieldingDb,
            SpecimenDeviationDb = 3,
        };
        Assert.Equal(0, Draws.Seeds(60)
            .Count(seed => Rehearsed.Analysed(plan with { Seed = seed }).Findings.Any(f => f.Code == "lost-sign")));
    }

    private static AnalysisResult Without(string lost) => Taken.With(Plan)
        .But(s => IsLost(s, lost) ? s.As(levels: [.. s.Levels.Select(l => -l)]) : s).Analysed();

    private static bool IsLost(Sweep sweep, string lost)
    {
        string[] words = lost.Split(' ');
        return words.Contains(sweep.Role.ToString().ToLowerInvariant())
            && (words is not ["covered", var specimen] || specimen is "floor" or "reference" || specimen == sweep.Specimen);
    }
}
