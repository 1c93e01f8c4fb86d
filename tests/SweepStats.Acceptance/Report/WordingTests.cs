using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Findings;
using SweepStats.Report.Pages;
using SweepStats.Report.Text;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Acceptance.Report;

public sealed class WordingTests
{
    [Theory]
    [InlineData(433.92e6, "433.9 MHz")]
    [InlineData(30e6, "30 MHz")]
    [InlineData(999.99e6, "1 GHz")]
    [InlineData(2.4371e9, "2.437 GHz")]
    [InlineData(9e3, "9 kHz")]
    [InlineData(0, "0 Hz")]
    [InlineData(50, "50 Hz")]
    [InlineData(40e9, "40 GHz")]
    public void AFrequencyHasFourDigitsAndItsUnit(double hertz, string expected) =>
    Assert.Equal(expected, PrintedFrequency.Frequency(new Hertz(hertz)));

    [Fact]
    public void ABandThatPrintsAlikeAtBothEndsIsOneFrequency() =>
        Assert.Equal("433.9 MHz", PrintedFrequency.Band(new FrequencyBand(new Hertz(433.91e6), new Hertz(433.92e6))));

    // 10^(-20/20) = 0.1 of the field and 10^(-20/10) = 0.01 of the power arrive; 60 dB: 0.001 and 0.000001.
    [Theory]
    [InlineData(20, "90.0 %", "99.0 %")]
    [InlineData(40, "99.0 %", "99.99 %")]
    [InlineData(60, "99.90 %", "99.9999 %")]
    [InlineData(0, "none", "none")]
    [InlineData(-3, "none", "none")]
    public void BlockedSharesAreNamedForFieldAndForPower(double decibels, string field, string power)
    {
        Assert.StartsWith(field.TrimEnd('%', ' ', '0'),
            PageWords.Blocked(new BandFigure(decibels, null, null), db => db.FieldBlocked), StringComparison.Ordinal);
        Assert.StartsWith(power.TrimEnd('%', ' ', '0'),
            PageWords.Blocked(new BandFigure(decibels, null, null), db => db.PowerBlocked), StringComparison.Ordinal);
    }

    [Fact]
    public void ABlockedShareIsNeverRoundedUpToEverything()
    {
        for (double decibels = 0.5; decibels < 150; decibels += 0.5)
        {
            string share = PageWords.Blocked(new BandFigure(null, decibels, null), db => db.PowerBlocked);
            Assert.DoesNotContain("100", share, StringComparison.Ordinal);
            Assert.StartsWith("≥ ", share, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void ACampaignWithoutFloorSaysSoInTheVerdictItself()
    {
        AnalysisResult result = Samples.Run(Samples.Small with { FloorSweeps = 0 }, Samples.Power);
        Assert.Contains("no floor sweep is in use", VerdictWords.Headline(result), StringComparison.Ordinal);
        Page page = new(result);
        Assert.Contains(VerdictWords.Headline(result), page.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(page.Charts, f => f.Path.Contains("dynamic-range", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(RequirementOutcome.Meets, "meets the requirement (40 dB)")]
    [InlineData(RequirementOutcome.Fails, "the requirement (40 dB) is not met")]
    [InlineData(RequirementOutcome.Undecided, "is met is undecided")]
    [InlineData(RequirementOutcome.CannotTell, "whether the requirement (40 dB) is met cannot be told")]
    public void EveryOutcomeHasItsWords(RequirementOutcome outcome, string words)
    {
        AnalysisResult result = Samples.ThreeLots with { Verdict = new Verdict(Trust.Limited, outcome, []) };
        Assert.Contains(words, VerdictWords.Headline(result), StringComparison.Ordinal);
        Assert.NotNull(VerdictWords.OutcomeReason(result));
    }

    [Fact]
    public void AnUntrustworthyMeasurementNeverSaysItCanBeTrusted()
    {
        AnalysisResult result =
            Samples.ThreeLots with { Verdict = new Verdict(Trust.Untrustworthy, RequirementOutcome.Meets, []) };
        Assert.StartsWith("Do not rely on this measurement: it shows for no specimen", VerdictWords.Headline(result),
            StringComparison.Ordinal);
    }

    [Fact]
    public void FindingsThatDifferOnlyInNumbersAreToldOnceWithTheirSpan()
    {
        Finding first = new()
        {
            Code = "capped",
            Severity = Severity.Warning,
            Message = "At 32 of 201 points, by 6.5 dB.",
            Basis = "b",
            NextStep = "More range.",
            Specimen = new("A", "1"),
        };
        FindingGroup group = Assert.Single(
            FindingGroup.Of([first, first with { Message = "At 9 of 201 points, by 7.5 dB.", Specimen = new("A", "2") }]));
        Assert.Equal("At 9 to 32 of 201 points, by 6.5 to 7.5 dB.", group.CommonMessage);
    }

    [Fact]
    public void FindingsThatDifferInWordsAreToldOneByOne()
    {
        Finding first =
            new() { Code = "odd", Severity = Severity.Note, Message = "Sweep a is odd.", Basis = "b", NextStep = "Look." };
        Assert.Null(Assert.Single(FindingGroup.Of([first, first with { Message = "Sweep b is odd." }])).CommonMessage);
    }

    [Fact]
    public void WhatFindingsRestOnIsToldOnceWhereItDiffersOnlyInNumbers()
    {
        Finding first = new()
        {
            Code = "capped",
            Severity = Severity.Warning,
            Message = "m",
            Basis = "Median 0.6 dB.",
            NextStep = "s",
            Specimen = new("A", "1"),
        };
        Finding second = first with { Basis = "Median 1.5 dB.", Specimen = new("A", "2") };
        Finding third = first with { Basis = "By another rule.", Specimen = new("A", "3") };
        Assert.Equal(["Rests on: Median 0.6 to 1.5 dB."], Told(first, second));
        Assert.Equal(["Rests on, A/1: Median 0.6 dB.", "Rests on, A/3, A/4: By another rule."],
            Told(first, third, third with { Specimen = new("A", "4") }));
        AnalysisResult result = Samples.Run(Samples.Small, Samples.Power) with { Findings = [first, second] };
        Assert.Contains("  Rests on: Median 0.6 to 1.5 dB.", FindingWords.Check(result));

        string[] Told(params Finding[] findings)
        {
            AnalysisResult shown = Samples.Run(Samples.Small, Samples.Power) with { Findings = [.. findings] };
            return [.. new Page(shown).Tree.Descendants("p").Where(p => p.Attribute("class")?.Value == "basis")
                .Select(p => p.Value)];
        }
    }

    [Fact]
    public void GraveFindingsComeFirstOnThePage()
    {
        Finding note = new() { Code = "n", Severity = Severity.Note, Message = "m", Basis = "b", NextStep = "s" };
        AnalysisResult result = Samples.Run(Samples.Small, Samples.Power) with
        {
            Findings = [note, note with { Severity = Severity.Warning }, note with { Severity = Severity.Fault }],
        };
        Assert.Equal(["Fault", "Warning", "Note"], new Page(result).Tree.Descendants("strong").Select(e => e.Value));
    }

    [Fact]
    public void ARequirementThatChangesOverFrequencyIsNamedByItsEnds()
    {
        var grid = new FrequencyGrid([1e6, 1e7, 1e8]);
        var line = Requirement.Line([new(new Hertz(1e6), new Decibels(20)), new(new Hertz(1e8), new Decibels(40))]);
        Assert.Equal("20 dB to 40 dB, depending on frequency", VerdictWords.Required(line, grid));
        Assert.Equal("40 dB", VerdictWords.Required(Requirement.Constant(new Decibels(40)), grid));
        Assert.Equal("60.25 dB", VerdictWords.Required(Requirement.Constant(new Decibels(60.25)), grid));
    }
}
