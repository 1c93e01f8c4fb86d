using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Findings;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;
using SweepStats.Report.Specimens;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>What was looked at, what was not, and over which frequencies a claim holds.</summary>
public sealed class ScopeWordingTests
{
    private static readonly Finding Note =
        new() { Code = "n", Severity = Severity.Note, Message = "m", Basis = "b", NextStep = "s" };

    [Fact]
    public void WhatIsNotTestedIsSaidOnConsoleAndPageWhateverWasFound()
    {
        const string Words = "checks could not be made, or not wholly, for want of sweeps or statements.";
        AnalysisResult clean = Samples.Run(Samples.Small, Samples.Power) with { Findings = [] };
        foreach (AnalysisResult result in new[] { clean, Samples.ThreeLots })
        {
            Assert.Contains(SummaryWords.Summary(result), l => l.Contains(Words, StringComparison.Ordinal));
            Assert.Contains(FindingWords.Check(result), l => l.Contains(Words, StringComparison.Ordinal));
            Assert.Contains(Words, Section(new Page(result), "verdict"), StringComparison.Ordinal);
        }

        string counted = $@"^The checks that could be made found nothing that limits it\. \d+ of {Checklist.All.Length} ";
        Assert.Matches(counted + System.Text.RegularExpressions.Regex.Escape(Words), VerdictWords.TrustReason(clean));
        Assert.Contains(Words, Section(new Page(clean), "next"), StringComparison.Ordinal);
        AnalysisResult nearly =
            clean with { Checks = [new CheckRun("over-input", "no limit is stated"), new CheckRun("drift", null)] };
        Assert.EndsWith("for want of sweeps or statements: levels against the receiver's maximum input.",
            VerdictWords.TrustReason(nearly), StringComparison.Ordinal);
        AnalysisResult whole = clean with { Checks = [new CheckRun("drift", null)] };
        Assert.Equal("The checks that could be made found nothing that limits it. Every check could be made.",
            VerdictWords.TrustReason(whole));
    }

    [Fact]
    public void ACheckWaitsForNeitherLotsNorChoice()
    {
        AnalysisResult result = Samples.Run(Samples.Small with { Lots = 2, SpecimensPerLot = 2 }, Samples.Power);
        Assert.NotEmpty(FindingWords.Check(result));
        Assert.False(result.LotsWhenAsked.IsValueCreated || result.ChoiceWhenAsked.IsValueCreated);
        Assert.Contains(SummaryWords.Summary(result), l => l.Contains("lot", StringComparison.Ordinal));
        Assert.True(result.LotsWhenAsked.IsValueCreated && result.ChoiceWhenAsked.IsValueCreated);
    }

    [Fact]
    public void IntervalsWithoutPlacementsSayWhatTheyDoNotCover()
    {
        AnalysisResult result =
            Samples.Run(Samples.Small, Samples.Power) with { Findings = [Note with { Code = "placement-unknown" }] };
        const string Words = "not how well a specimen can be put back.";
        Assert.Contains(Words, VerdictWords.TrustReason(result), StringComparison.Ordinal);
        Assert.Contains(Words, Section(new Page(result), "verdict"), StringComparison.Ordinal);
        Assert.DoesNotContain(Words, VerdictWords.TrustReason(result with { Findings = [Note] }), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(30e6, 1e9, 161, "SE ≥ 38.9 dB at all 161 frequencies from 30 MHz to 1 GHz (weakest at 31.34 MHz)")]
    [InlineData(433.92e6, 433.92e6, 1, "SE ≥ 38.9 dB at 433.9 MHz")]
    [InlineData(433.91e6, 433.92e6, 2, "SE ≥ 38.9 dB at all 2 frequencies near 433.9 MHz (weakest at 31.34 MHz)")]
    public void AClaimNamesTheFrequenciesItHoldsAt(double start, double stop, int points, string expected)
    {
        BandStatement band = Samples.ThreeLots.Bands[0] with
        {
            AtLeast = new Decibels(38.95),
            WeakestAt = new Hertz(31.342e6),
            Band = new FrequencyBand(new Hertz(start), new Hertz(stop)),
            PointCount = points,
        };
        Assert.Equal(expected, VerdictWords.Claim(band));
    }

    [Fact]
    public void NothingSaysAtEveryFrequencyWithoutSayingMeasured()
    {
        AnalysisResult meets = Samples.Run(Samples.Small, Samples.Asking(1));
        string words = string.Join(' ', SummaryWords.Summary(meets).Append(new Page(meets).Words));
        Assert.Contains("at every measured frequency", words, StringComparison.Ordinal);
        Assert.DoesNotContain("at every frequency", words, StringComparison.Ordinal);
    }

    [Fact]
    public void AShareOfNothingHasNoLimits()
    {
        Assert.Equal("none", PageWords.Blocked(new BandFigure(-3, -4, -2), db => db.PowerBlocked));
        Assert.StartsWith("none (none to ", PageWords.Blocked(new BandFigure(-1, -2, 2), db => db.PowerBlocked),
            StringComparison.Ordinal);
    }

    [Fact]
    public void ScatterIsOfOnePlacementOnlyWherePlacementsAreNoted()
    {
        var curve = Samples.ThreeLots.Curves[0] with { RepeatabilityDb = 0.3, PlacementCount = 3 };
        BandStatement band = Samples.ThreeLots.Bands[0];
        Assert.Contains("between sweeps of one placement: 0.3 dB", PageWords.Repeats(curve, band, true),
            StringComparison.Ordinal);
        Assert.Contains("scatter between sweeps: 0.3 dB", PageWords.Repeats(curve with { PlacementCount = null }, band, true),
            StringComparison.Ordinal);
    }

    [Fact]
    public void NotesComeAfterTheCharts()
    {
        Page page = new(Samples.ThreeLots with { Findings = [Note, Note with { Severity = Severity.Warning }] });
        string[] sections = [.. page.Tree.Descendants("section").Select(s => s.Attribute("aria-labelledby")!.Value)];
        Assert.Equal(
            ["verdict", "next", "bands", "lots", "choice", "uncertainty-budget", "checks", "charts", "notes"],
            sections.Where(s => !s.StartsWith("sheet-", StringComparison.Ordinal)).Take(9));
        Assert.DoesNotContain("Note", Section(page, "next"), StringComparison.Ordinal);
    }

    [Fact]
    public void ListsCutShortSayOnceWhereTheRestStands()
    {
        FrequencyBand[] stretches =
            [.. Enumerable.Range(1, 8).Select(i => new FrequencyBand(new Hertz(i * 1e6), new Hertz(i * 1e6)))];
        Finding cut = Note with { Where = [.. stretches] };
        Page both = new(Samples.ThreeLots with { Findings = [cut, cut with { Severity = Severity.Warning }] });
        Assert.Equal(2, both.Words.Split(PageWords.AllStretches).Length);
        Page noteOnly = new(Samples.ThreeLots with { Findings = [cut] });
        Assert.Equal(2, noteOnly.Words.Split(PageWords.AllStretches).Length);
        Page whole = new(Samples.ThreeLots with { Findings = [Note with { Where = [stretches[0]] }] });
        Assert.DoesNotContain(PageWords.AllStretches, whole.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void TheCheckTellsAFindingOfManySpecimensInOneLine()
    {
        Finding Of(int i, int points) =>
            Note with { Code = "capped", Specimen = new SpecimenName("A", $"S{i}"), Message = $"At {points} of 31 points." };
        AnalysisResult nine = Samples.ThreeLots with { Findings = [.. Enumerable.Range(1, 10).Select(i => Of(i, i))] };
        Assert.Contains("  A/S1, A/S2, A/S3, A/S4, A/S5, A/S6, A/S7, A/S8 and 2 more: At 1 to 10 of 31 points.",
            FindingWords.Check(nine));
        AnalysisResult eight = Samples.ThreeLots with { Findings = [.. Enumerable.Range(1, 8).Select(i => Of(i, i))] };
        Assert.Contains("  A/S8: At 8 of 31 points.", FindingWords.Check(eight));
    }

    [Fact]
    public void ChartTitlesStandAtTheLeftInTheTypeOfThePage()
    {
        var title = new Page(Samples.ThreeLots).Chart("shielding").Descendants()
            .First(e => e.Name.LocalName == "text" && e.Value == SpecimenChartWords.OverviewTitle);
        Assert.Equal("Georgia, 'Times New Roman', serif", title.Attribute("font-family")!.Value);
        Assert.Equal("400", title.Attribute("font-weight")!.Value);
        Assert.NotEqual("middle", title.Attribute("text-anchor")?.Value);
    }

    private static string Section(Page page, string id) =>
        page.Tree.Descendants("section").Single(s => s.Attribute("aria-labelledby")!.Value == id).Value;
}
