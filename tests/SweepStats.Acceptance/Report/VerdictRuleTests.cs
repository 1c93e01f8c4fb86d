using System.Xml.Linq;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Findings;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>How the verdict comes about, and what was looked at, as a reader of the page sees it.</summary>
public sealed class VerdictRuleTests
{
    private static readonly Finding Note =
        new() { Code = "near-floor", Severity = Severity.Note, Message = "m", Basis = "b", NextStep = "s" };
    private static readonly Finding Warning = Note with { Code = "capped", Severity = Severity.Warning };
    private static readonly Finding Fault = Note with { Code = "over-input", Severity = Severity.Fault };

    // Three specimens and few frequencies: what is printed of findings does not depend on the curves.
    private static readonly Lazy<AnalysisResult> Three =
        new(() => Samples.Run(Samples.Small with { SpecimensPerLot = 3, Points = 5 }, Samples.Asking(40)));

    [Fact]
    public void TheRuleThatIsPrintedIsTheOneTheVerdictFollows()
    {
        Assert.Equal(Trust.Untrustworthy, Trusted(Note, Warning, Fault));
        Assert.Equal(Trust.Untrustworthy, Trusted(Fault));
        Assert.Equal(Trust.Limited, Trusted(Note, Warning));
        Assert.Equal(Trust.Trustworthy, Trusted(Note, Note));
        Assert.Equal(Trust.Trustworthy, Trusted());
        Assert.Contains(RuleWords.TrustRule, Verdict(With(Warning)).Value, StringComparison.Ordinal);

        static Trust Trusted(params Finding[] findings) => Judge.Of([.. findings], [], null, []).Trust;
    }

    [Fact]
    public void TheFindingsAreCountedWithTheChecksTheyComeFrom()
    {
        Finding one = Warning with { Specimen = new SpecimenName("A", "1") };
        Finding two = Warning with { Specimen = new SpecimenName("A", "2") };
        Finding copy = Warning with { Code = "duplicate-sweep", Message = "n" };
        string[] tally = [.. Verdict(With(one, two, copy, copy with { Message = "o" }, Note)).Descendants("ul").First()
            .Elements("li").Select(e => e.Value)];
        Assert.Equal(["No fault.", "2 warnings, from capped (2 specimens), duplicate-sweep (2 times).",
            "1 note, from near-floor."], tally);
    }

    [Fact]
    public void AVerdictWithinLimitsNamesSpecimensAndBands()
    {
        SpecimenName[] names = [.. Three.Value.Curves.Select(c => c.Name)];
        Finding carrier = Warning with { Code = "ambient", Where = [Megahertz(400, 500)] };
        Finding first = Warning with { Specimen = names[0], Where = [Megahertz(100, 200), Megahertz(700, 800)] };
        Finding second = Warning with { Specimen = names[1], Where = [Megahertz(150, 300)] };
        Finding few = Warning with { Code = "too-few-repeats", Specimen = names[2] };
        Assert.Equal(
            [["ambient", "all", "400 MHz to 500 MHz"], ["capped", $"{names[0]}, {names[1]}",
                "100 MHz to 300 MHz, 700 MHz to 800 MHz; not the same for each"],
                ["too-few-repeats", names[2].ToString(), "all"]],
            Limits(With(carrier, first, second, few)));
        Assert.Equal([["capped", "all", "100 MHz to 200 MHz, 700 MHz to 800 MHz"]],
            Limits(With([.. names.Select(n => first with { Specimen = n })])));
        Assert.Empty(Limits(With(Note)));
        Assert.Empty(Limits(With(Fault, Warning)));
    }

    [Fact]
    public void EveryCheckOfTheListHasItsWordsAndItsOutcome()
    {
        Assert.All(Checklist.All, check => Assert.NotNull(CheckWords.LooksFor(check.Code)));
        string[][] rows = Outcomes(Samples.ThreeLots);
        Assert.Equal(Checklist.All.Select(c => c.Code), rows.Select(r => r[1]));
        Assert.Equal("found: 1 warning", Of(rows, "ambient"));
        Assert.Equal($"found: 1 note ({Samples.ThreeLots.Curves.Length} specimens)", Of(rows, "near-floor"));
        Assert.Equal("nothing found", Of(rows, "duplicate-sweep"));
        Assert.Equal("could not be tested: there are no plate sweeps", Of(rows, "leakage"));
        Assert.Equal("could not be tested: there are no linearity sweeps", Of(rows, "saturation-step"));
        Assert.Equal("could not be tested: no maximum input level is stated (max_input_dbm)", Of(rows, "over-input"));
    }

    [Fact]
    public void WithoutAFloorNoCheckThatNeedsOneSaysItFoundNothing()
    {
        string[][] rows = Outcomes(Samples.Run(Samples.Small with { FloorSweeps = 0 }, Samples.Power));
        Assert.All(["under-ranged", "capped", "near-floor", "below-thermal", "averaging-unknown"],
            code => Assert.Equal("could not be tested: no floor sweep is in use and no floor is declared", Of(rows, code)));
        Assert.Equal("could not be tested: no floor sweep is in use", Of(rows, "ambient"));
        Assert.Equal("could not be tested: no shielding is known from above", Of(rows, "negative-shielding"));
    }

    [Fact]
    public void TheConsoleSaysWhatFoundNothingAndWhatCouldNotBeTested()
    {
        IReadOnlyList<string> lines = FindingWords.Check(Samples.ThreeLots);
        string clear = Assert.Single(lines, l => l.StartsWith("Looked for and not found: ", StringComparison.Ordinal));
        Assert.Contains("duplicate-sweep", clear, StringComparison.Ordinal);
        Assert.DoesNotContain("ambient", clear, StringComparison.Ordinal);
        Assert.Contains("Could not be tested (leakage): there are no plate sweeps", lines);
    }

    private static AnalysisResult With(params Finding[] findings) => Three.Value with
    {
        Findings = [.. findings],
        Verdict = Judge.Of([.. findings], [], null, []),
    };

    private static FrequencyBand Megahertz(double start, double stop) => new(new Hertz(start * 1e6), new Hertz(stop * 1e6));

    private static XElement Verdict(AnalysisResult result) => Section(result, "verdict");

    private static string[][] Limits(AnalysisResult result) => Rows(Section(result, "verdict"), RuleWords.LimitsCaption);

    private static string[][] Outcomes(AnalysisResult result) =>
        Rows(Section(result, "checks"), Section(result, "checks").Descendants("caption").Single().Value);

    private static string Of(string[][] rows, string code) => rows.Single(r => r[1] == code)[2];

    private static string[][] Rows(XElement section, string caption) =>
        [.. section.Descendants("table").Where(t => t.Element("caption")!.Value == caption).Elements("tbody").Elements("tr")
            .Select(r => r.Elements().Select(c => c.Value).ToArray())];

    private static XElement Section(AnalysisResult result, string id) =>
        new Page(result).Tree.Descendants("section").Single(s => s.Attribute("aria-labelledby")!.Value == id);
}
