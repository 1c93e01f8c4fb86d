using System.Xml.Linq;
using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Report.Answer;
using SweepStats.Report.Findings;
using SweepStats.Report.Screens;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>Each specimen against the requirement, and why it cannot be told.</summary>
public sealed class RequirementWordingTests
{
    private static readonly RequirementOutcome[] Outcomes =
    [
        RequirementOutcome.Meets, RequirementOutcome.Fails, RequirementOutcome.Undecided, RequirementOutcome.CannotTell,
        RequirementOutcome.Meets, RequirementOutcome.Meets,
    ];

    private static readonly string[] Words = ["meets", "fails", "undecided", "cannot be told", "meets", "meets"];

    [Fact]
    public void EverySpecimenSaysHowItStands()
    {
        AnalysisResult result = With(RequirementOutcome.Undecided);
        XElement claims = new Page(result).Tree.Descendants("table").First();
        string[] columns =
            [.. claims.Descendants("th").Where(th => th.Attribute("scope")!.Value == "col").Select(th => th.Value)];
        int requirement = Array.IndexOf(columns, "Requirement");
        Assert.Equal(2, requirement);
        // Who does not meet it comes first.
        Assert.Equal(
            ["fails", "cannot be told", "undecided", "meets", "meets", "meets"],
            claims.Element("tbody")!.Elements("tr").Select(r => r.Elements().ElementAt(requirement).Value));
        Assert.All(claims.Element("tbody")!.Elements("tr"),
            r => Assert.Equal(Words[Place(result, r.Elements().First().Value)], r.Elements().ElementAt(requirement).Value));
        string[] lines = [.. SummaryWords.Summary(result).Where(l => l.Contains("  SE ≥ ", StringComparison.Ordinal))];
        Assert.All(lines.Zip(Words),
            pair => Assert.EndsWith($"Requirement: {pair.Second}", pair.First, StringComparison.Ordinal));
        Assert.Equal(6, lines.Length);
    }

    private static int Place(AnalysisResult result, string name) =>
        result.Curves.Select(c => c.Name.ToString()).ToList().IndexOf(name);

    // Nothing that follows from a plate over the reference may stand before that.
    [Fact]
    public void PlateAndReferenceExchangedIsTheFirstAdvice()
    {
        Campaign drawn =
            Rehearser.Draw(Samples.Small with { PlateSweeps = 3, ShieldingStartDb = 30, ShieldingStopDb = 30 }).Campaign;
        Campaign exchanged = drawn with { Sweeps = [.. drawn.Sweeps.Select(Exchanged)] };
        AnalysisResult result =
            Analysis.Run(exchanged, Samples.Power with { Requirement = Requirement.Constant(new Decibels(20)) });
        Assert.Equal("Look whether plate and reference sweeps were exchanged: they look so. Give each its own role.",
            VerdictWords.OutcomeReason(result));
    }

    private static Sweep Exchanged(Sweep sweep) => sweep.Role switch
    {
        SweepRole.Plate => new Sweep(sweep.Name, SweepRole.Reference, sweep.Grid, sweep.Levels, sweep.Scale),
        SweepRole.Reference => new Sweep(sweep.Name, SweepRole.Plate, sweep.Grid, sweep.Levels, sweep.Scale),
        _ => sweep,
    };

    [Fact]
    public void WithoutRequirementThereIsNoColumnForIt()
    {
        AnalysisResult result = Samples.Run(Samples.Small, Samples.Power);
        Assert.DoesNotContain("Requirement", new Page(result).Tree.Descendants("table").First().Value, StringComparison.Ordinal);
        Assert.DoesNotContain(SummaryWords.Summary(result), l => l.Contains("Requirement:", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(RequirementOutcome.Fails)]
    [InlineData(RequirementOutcome.Undecided)]
    [InlineData(RequirementOutcome.CannotTell)]
    public void TheHeadlineCountsTheSpecimensThatMeetIt(RequirementOutcome outcome) =>
        Assert.Contains("; of 6 specimens 3 meet it, 1 fails", VerdictWords.Headline(With(outcome)), StringComparison.Ordinal);

    [Fact]
    public void TheReasonSaysWhetherRangeRepeatsOrTheFloorAreMissing()
    {
        AnalysisResult Asked(Rehearsal.RehearsalPlan plan) => Samples.Run(plan, Samples.Asking(150));
        Has(Analysis.Run(Opened(Samples.Small with { ShieldingStartDb = 200, ShieldingStopDb = 200 }), Samples.Asking(150)),
            "Make more dynamic range", "Repeat the sweeps", "without a floor");
        Has(Asked(Samples.Small with { FloorSweeps = 0 }), "without a floor", "Repeat the sweeps", "more dynamic range");
        Has(
            Asked(Samples.Small with { ReferenceSweeps = 1, CoveredSweeps = 1, ShieldingStartDb = 20, ShieldingStopDb = 20 }),
            "Repeat the sweeps", "without a floor", "more dynamic range");
    }

    [Fact]
    public void FrequenciesThatNotAllSweepsHaveAreNamedAsAReason()
    {
        AnalysisResult result = With(RequirementOutcome.CannotTell);
        const string Reason = "Frequencies that not all sweeps have";
        Assert.DoesNotContain(Reason, VerdictWords.OutcomeReason(result)!, StringComparison.Ordinal);
        Finding mismatch =
            new() { Code = "grid-mismatch", Severity = Severity.Warning, Message = "m", Basis = "b", NextStep = "s" };
        Assert.Contains(Reason, VerdictWords.OutcomeReason(result with { Findings = [mismatch] })!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(null, 0, "the one-sided 95 % lower limit is at or above the requirement. Fails: the one-sided 95 % upper limit")]
    [InlineData(0.99, 1.25, "the one-sided 99 % lower limit is at or above the requirement and at least 1.25 dB above it (guard "
        + "band). Fails: the one-sided 99 % upper limit is below the requirement.")]
    [InlineData(0.5, 0,
        "the estimate is at or above the requirement. Fails: the estimate is below the requirement. This is simple acceptance")]
    public void TheRuleStandsInOneSentenceOnPageAndConsole(double? level, double guard, string rule)
    {
        AnalysisPlan plan = Samples.Asking(20) with
        {
            RequirementConfidence = level is { } l ? new Statistics.Confidence(l)
            : null,
            GuardBand = new Quantities.Decibels(guard),
        };
        AnalysisResult result = Samples.Run(Samples.Small, plan);
        Assert.Contains(rule, DecisionWords.DecisionRule(result)!, StringComparison.Ordinal);
        string brief = DecisionWords.DecisionRuleInBrief(result)!;
        Assert.Contains(brief, SummaryWords.Summary(result));
        Assert.Contains(brief, FindingWords.Check(result));
        Assert.DoesNotContain(SummaryWords.Summary(result), l => l.Contains("Holm", StringComparison.Ordinal));
        Assert.Contains(DecisionWords.DecisionRule(result)!, new Page(result).Tree.Root!.Value, StringComparison.Ordinal);
        Assert.Contains("Holm", DecisionWords.DecisionRule(result)!, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.97349, 0.97349, "97.3 %")]
    [InlineData(0.94999, 0.94999, "94.9 %")]
    [InlineData(0.999, 1, "> 99.9 %")]
    [InlineData(0.9999, 1, "> 99.9 %")]
    [InlineData(0, 0.001, "< 0.1 %")]
    [InlineData(0.962, 1, "at least 96.2 %")]
    [InlineData(0, 0.05, "at most 5 %")]
    [InlineData(0, 0.0455, "at most 4.6 %")]
    [InlineData(0, 0.0001, "< 0.1 %")]
    [InlineData(0.5, 0.5, "50 %")]
    public void AProbabilityIsSaidAsFarAsItIsKnown(double least, double most, string words) =>
        Assert.Equal(words, DecisionWords.Probability(new ConformanceProbability(least, most)));

    // A placement swept without its specimen leaves bounds, and looks like a want of range.
    [Fact]
    public void WhatMisleadsIsSettledBeforeRangeIsMade()
    {
        Campaign drawn = Rehearser.Draw(Samples.Small with { SpecimensPerLot = 2, Placements = 3, CoveredSweeps = 2 }).Campaign;
        Sweep reference = drawn.Sweeps.First(s => s.Role == SweepRole.Reference);
        Sweep Uncovered(Sweep s) =>
            new(s.Name, s.Role, s.Grid, [.. reference.Levels.Select((l, f) => l + (0.1 * ((f + s.Name.Length) % 3)))], s.Scale)
            {
                Lot = s.Lot,
                Specimen = s.Specimen,
                Placement = s.Placement,
            };
        Campaign changed = drawn with
        {
            Sweeps = [.. drawn.Sweeps.Select(s => s is { Specimen: "A02", Placement: "p2" } ? Uncovered(s) : s)],
        };
        AnalysisResult result = Analysis.Run(changed, Samples.Asking(30));
        Has(result, "Settle first what was found; its next step stands below: a placement far from the others of its "
            + "specimen.", "range");
        string[] screen = [.. FirstScreenWords.FirstScreen(result, 100, [])];
        int told = Array.FindIndex(screen, l => l.StartsWith("Fault (stray-placement), A/A02", StringComparison.Ordinal));
        Assert.True(told > 0);
        Assert.DoesNotContain(screen[..told],
            l => l.StartsWith("Warning", StringComparison.Ordinal) || l.StartsWith("Fault", StringComparison.Ordinal));
    }

    // With a sweep of an opened specimen, left out, which shows that the source was on.
    private static Campaign Opened(RehearsalPlan plan)
    {
        Campaign drawn = Rehearser.Draw(plan).Campaign;
        Sweep covered = drawn.Sweeps.First(s => s.Role == SweepRole.Covered);
        Sweep opened = new("opened", covered.Role, covered.Grid, [.. covered.Levels.Select(l => l + 50)], covered.Scale)
        {
            Lot = covered.Lot,
            Specimen = covered.Specimen,
            ExcludedBecause = "opened",
        };
        return drawn with { Sweeps = drawn.Sweeps.Add(opened) };
    }

    private static void Has(AnalysisResult result, string reason, params string[] others)
    {
        Assert.Equal(RequirementOutcome.CannotTell, result.Verdict.Requirement);
        string words = VerdictWords.OutcomeReason(result)!;
        Assert.Contains(reason, words, StringComparison.Ordinal);
        Assert.All(others, other => Assert.DoesNotContain(other, words, StringComparison.Ordinal));
    }

    private static AnalysisResult With(RequirementOutcome outcome) => Samples.ThreeLots with
    {
        Verdict = new Verdict(Trust.Limited, outcome,
            [.. Samples.ThreeLots.Curves.Zip(Outcomes, (c, o) => new SpecimenOutcome(c.Name, o))]),
    };
}
