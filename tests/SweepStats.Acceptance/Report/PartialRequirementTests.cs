using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Screens;
using SweepStats.Statistics;
using SweepStats.Uncertainty;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>Verdicts that hold for a part, that chance could explain, or that repeats cannot settle, said as such.</summary>
public sealed class PartialRequirementTests
{
    private static readonly Rehearsal.RehearsalPlan Eleven =
        new() { Title = "Eleven", Points = 11, ShieldingStartDb = 50, ShieldingStopDb = 50 };

    [Fact]
    public void WhatIsAskedAtSomeFrequenciesIsNotSaidOfAll()
    {
        AnalysisResult result = Samples.Run(Eleven, Line((100e6, 20), (200e6, 40)));
        Assert.Equal(RequirementOutcome.Meets, result.Verdict.Requirement);
        const string Where = "at the 2 of 11 measured frequencies where something is asked (";
        Assert.Contains(Where, VerdictWords.Headline(result), StringComparison.Ordinal);
        Assert.Contains(Where, VerdictWords.OutcomeReason(result)!, StringComparison.Ordinal);
        Assert.DoesNotContain("not measured", VerdictWords.Headline(result), StringComparison.Ordinal);
        Assert.Contains("at every measured frequency", VerdictWords.Headline(Samples.Run(Eleven, Samples.Asking(20))),
            StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsAskedBeyondTheMeasuredBandIsNamed()
    {
        AnalysisResult result = Samples.Run(Eleven, Line((10e6, 20), (2e9, 20)));
        const string Missing = "sked also from 10 MHz to 30 MHz and from 1 GHz to 2 GHz: not measured";
        Assert.Contains(Missing, VerdictWords.Headline(result), StringComparison.Ordinal);
        Assert.Contains(Missing, VerdictWords.OutcomeReason(result)!, StringComparison.Ordinal);
        Assert.Contains(Missing, new Page(result).Tree.Root!.Value, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1, "; of 3 specimens none is shown to meet it, 1 fails by itself (A/A02; among all together chance could do "
        + "that), 2 are undecided")]
    [InlineData(2, "; of 3 specimens none is shown to meet it, 2 fail by themselves (A/A01, A/A02; among all together chance "
        + "could do that), 1 is undecided")]
    public void SpecimensThatFailByThemselvesAreNamedInTheHeadline(int failing, string words)
    {
        AnalysisResult drawn = Samples.Run(Eleven with { SpecimensPerLot = 3 }, Samples.Asking(50));
        RequirementOutcome[] outcomes = failing == 1
            ? [RequirementOutcome.Undecided, RequirementOutcome.Fails, RequirementOutcome.Undecided]
            : [RequirementOutcome.Fails, RequirementOutcome.Fails, RequirementOutcome.Undecided];
        AnalysisResult result = drawn with
        {
            Verdict = new Verdict(Trust.Trustworthy, RequirementOutcome.Undecided,
                [.. drawn.Curves.Zip(outcomes, (c, o) => new SpecimenOutcome(c.Name, o))]),
        };
        string[] names = [.. drawn.Curves.Select(c => c.Name.ToString())];
        Assert.Contains(words.Replace("A/A01", names[0], StringComparison.Ordinal)
            .Replace("A/A02", names[1], StringComparison.Ordinal), VerdictWords.Headline(result), StringComparison.Ordinal);
        Assert.Contains("in two steps", new Page(result).Tree.Root!.Value, StringComparison.Ordinal);
        Assert.DoesNotContain("fails by itself",
            VerdictWords.Headline(drawn with { Verdict = drawn.Verdict with { Specimens = [] } }), StringComparison.Ordinal);
    }

    [Fact]
    public void WhereStatedErrorsRuleNobodyIsSentForMoreRepeats()
    {
        var error = new UncertaintyEntry
        {
            Name = "antenna",
            HalfWidthDb = 3,
            Distribution = ErrorDistribution.Rectangular,
            ActsOn = ErrorActsOn.Covered,
        };
        AnalysisResult stated = Samples.Run(Eleven, Samples.Asking(49.5) with { Uncertainties = [error] });
        Assert.Equal(RequirementOutcome.Undecided, stated.Verdict.Requirement);
        Assert.Contains("Make the stated errors smaller", VerdictWords.OutcomeReason(stated)!, StringComparison.Ordinal);
        Assert.DoesNotContain("more repeats narrow", VerdictWords.OutcomeReason(stated)!, StringComparison.Ordinal);
        AnalysisResult scattered = Samples.Run(Eleven, Samples.Asking(50));
        Assert.Contains("more repeats narrow what scatter makes of it", VerdictWords.OutcomeReason(scattered)!,
            StringComparison.Ordinal);
    }

    [Fact]
    public void InTheGuardBandRepeatsChangeNothing()
    {
        AnalysisResult result = Samples.Run(Eleven, Samples.Asking(40) with { GuardBand = new Decibels(20) });
        Assert.Equal(RequirementOutcome.Undecided, result.Verdict.Requirement);
        Assert.Equal("Lower the guard band or improve the specimen: somewhere the interval lies in the guard band, and repeats "
            + "do not change that.", VerdictWords.OutcomeReason(result));
    }

    [Theory]
    [InlineData(40, null)]
    [InlineData(50, "Requirement undecided: ")]
    [InlineData(60, "Requirement not met: ")]
    [InlineData(150, "Requirement not met: ")]
    public void TheRequirementsNextStepStandsUnderWhatToDoNext(double asked, string? step)
    {
        AnalysisResult result = Samples.Run(Eleven, Samples.Asking(asked)) with { Findings = [] };
        string next =
            new Page(result).Tree.Descendants("section").Single(s => s.Attribute("aria-labelledby")!.Value == "next").Value;
        Assert.Equal(step is null, next.Contains("Nothing has to be done", StringComparison.Ordinal));
        Assert.Contains(step ?? string.Empty, next, StringComparison.Ordinal);
    }

    [Fact]
    public void ClaimAndDecisionNameTheirLevelsWhereTheseDiffer()
    {
        AnalysisResult strict = Samples.Run(Eleven, Samples.Asking(49) with { RequirementConfidence = new Confidence(0.9999) });
        Assert.Contains(SummaryWords.Summary(strict), l =>
            l.Contains("(95 %). Requirement: ", StringComparison.Ordinal) && l.EndsWith("(99.99 %)", StringComparison.Ordinal));
        Assert.DoesNotContain(SummaryWords.Summary(Samples.Run(Eleven, Samples.Asking(49))),
            l => l.Contains("(95 %). Requirement", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(45)]
    [InlineData(55)]
    public void SimpleAcceptanceSpeaksOfTheEstimate(double asked)
    {
        AnalysisResult simple = Samples.Run(Eleven, Samples.Asking(asked) with { RequirementConfidence = new Confidence(0.5) });
        Assert.DoesNotContain("limit", VerdictWords.OutcomeReason(simple)!, StringComparison.Ordinal);
        Assert.Contains("limit", VerdictWords.OutcomeReason(Samples.Run(Eleven, Samples.Asking(asked)))!,
            StringComparison.Ordinal);
    }

    [Fact]
    public void TheConsoleCountsTheWarningsThatItLists()
    {
        AnalysisResult drawn = Samples.Run(Eleven with { SpecimensPerLot = 2 }, Samples.Power);
        Finding first = new()
        {
            Code = "capped",
            Severity = Severity.Warning,
            Message = "One thing.",
            Basis = "b",
            NextStep = "s",
            Specimen = drawn.Curves[0].Name,
        };
        Finding second = first with { Message = "Quite another.", Specimen = drawn.Curves[1].Name };
        IReadOnlyList<string> lines = SummaryWords.Summary(drawn with { Findings = [first, second] });
        Assert.Contains(lines, l => l.StartsWith("1 warning limits", StringComparison.Ordinal));
        Assert.Single(lines, l => l.StartsWith("Warning", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("One thing.", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("Quite another.", StringComparison.Ordinal));
    }

    private static AnalysisPlan Line(params (double Hertz, double Db)[] points) =>
        Samples.Power with
        {
            Requirement = Requirement.Line([.. points.Select(p => new RequirementPoint(new Hertz(p.Hertz), new Decibels(p.Db)))]),
        };
}
