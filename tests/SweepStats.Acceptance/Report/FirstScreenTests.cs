using System.Text.RegularExpressions;
using SweepStats.Acceptance.Commands;
using SweepStats.Checks;
using SweepStats.Fields;
using SweepStats.Report.Answer;
using SweepStats.Report.Screens;
using SweepStats.Report.Text;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>
/// What a console shows first: on one screen, the verdict first, and nothing grave passed over for a lesser thing.
/// </summary>
public sealed class FirstScreenTests
{
    private const int Screen = 25;
    private const int Columns = 80;

    private static readonly string[] Closing = ["Report: reports/autumn/index.html"];

    public static TheoryData<string> Names => HardCampaignTests.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void BothFitOnAScreenOfEightyColumns(string name)
    {
        AnalysisResult result = HardCampaignTests.Of(name);
        Assert.InRange(Height(FirstScreenWords.FirstScreen(result, Columns, Closing)), 4, Screen);
        Assert.InRange(Height(FirstScreenWords.FirstCheck(result, Columns, Closing)), 4, Screen);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void TheVerdictComesFirstAndEveryFindingIsShownOrCounted(string name)
    {
        AnalysisResult result = HardCampaignTests.Of(name);
        foreach (IReadOnlyList<string> lines in (IReadOnlyList<string>[])[FirstScreenWords.FirstScreen(result, Columns, Closing),
            FirstScreenWords.FirstCheck(result, Columns, Closing)])
        {
            Assert.Equal(VerdictWords.Headline(result), lines[1]);
            Assert.Equal(Closing[0], lines[^1]);
            foreach (Severity severity in Enum.GetValues<Severity>())
            {
                int all = result.Findings.Where(f => f.Severity == severity).Select(f => (f.Code, f.NextStep)).Distinct().Count();
                Assert.Equal(all, Shown(lines, severity) + Counted(lines, severity));
            }
        }
    }

    [Fact]
    public void AWarningIsShownOnlyBelowEveryFault()
    {
        foreach (string name in HardCampaignTests.Names)
        {
            IReadOnlyList<string> lines = FirstScreenWords.FirstCheck(HardCampaignTests.Of(name), Columns, Closing);
            Assert.True(Counted(lines, Severity.Fault) == 0 || Shown(lines, Severity.Warning) == 0, name);
            int lastFault = lines.ToList().FindLastIndex(l => l.StartsWith("Fault", StringComparison.Ordinal));
            int firstWarning = lines.ToList().FindIndex(l => l.StartsWith("Warning", StringComparison.Ordinal));
            Assert.True(firstWarning < 0 || lastFault < firstWarning, name);
        }
    }

    [Fact]
    public void WhoDoesNotMeetStandsBeforeWhoShieldsLess()
    {
        // Curtains from 44 dB up against 55 dB: all miss it at the start of the band, and the least of them is named first.
        AnalysisResult result = Samples.Run(Samples.AutumnPlan, Samples.Asking(55));
        string[] rows = [.. FirstScreenWords.FirstScreen(result, columns: 200, Closing)
            .SkipWhile(l => !l.StartsWith("  Specimen", StringComparison.Ordinal)).Skip(1)
            .TakeWhile(l => l.Contains(" dB", StringComparison.Ordinal))];
        Assert.Equal(4, rows.Length);
        Assert.All(rows, row => Assert.EndsWith("fails", row, StringComparison.Ordinal));
        string least = result.Bands.MinBy(b => b.AtLeast!.Value.Value)!.Name.ToString();
        Assert.StartsWith($"  {least}", rows[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(60)]
    public void AFaultIsShownHoweverNarrowTheConsole(int columns)
    {
        AnalysisResult result = Samples.Run(Samples.Overloaded, Samples.Asking(40) with { Field = new FieldThreat(50e3, null) });
        Assert.Equal(Trust.Untrustworthy, result.Verdict.Trust);
        Assert.Contains(FirstScreenWords.FirstScreen(result, columns, Closing),
            l => l.StartsWith("Fault (", StringComparison.Ordinal));
        Assert.Contains(FirstScreenWords.FirstCheck(result, columns, Closing),
            l => l.StartsWith("Fault (", StringComparison.Ordinal));
    }

    [Fact]
    public void WithoutAFloorAllAreBounds()
    {
        AnalysisResult result = Samples.Run(Samples.Small with { FloorSweeps = 0 }, Samples.Asking(40));
        IReadOnlyList<string> lines = FirstScreenWords.FirstScreen(result, Columns, Closing);
        int head = lines.ToList().FindIndex(l => l.Contains("bounds only", StringComparison.Ordinal));
        Assert.Contains("  all  ", lines[head + 1], StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsLeftOutIsNamed()
    {
        AnalysisResult result = HardCampaignTests.Of("lots, capped in part");
        string all = string.Join('\n', FirstScreenWords.FirstScreen(result, Columns, Closing));
        Assert.True(SummaryWords.Summary(result).Count > Screen);
        Assert.Contains("Not shown here: ", all, StringComparison.Ordinal);
        Assert.Contains("specimens", all[all.IndexOf("Not shown here: ", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public void AFieldKeepsItsCaution()
    {
        AnalysisResult result = Samples.Run(Samples.AutumnPlan, Samples.Asking(40) with { Field = new FieldThreat(50e3, null) });
        IReadOnlyList<string> lines = FirstScreenWords.FirstScreen(result, Columns, Closing);
        Assert.Contains(lines, l => l.StartsWith("Field:", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.Contains("Local codes and licensed practice prevail.", StringComparison.Ordinal));
        Assert.InRange(Height(lines), 4, Screen);
    }

    [Fact]
    public void VerboseTellsEverySpecimenAndFinding()
    {
        using var scratch = new Files.ScratchFolder();
        (_, string brief, _) = Shell.Run("check", Shell.Demo);
        (_, string all, _) = Shell.Run("check", Shell.Demo, "--verbose");
        Assert.DoesNotContain("Rests on:", brief, StringComparison.Ordinal);
        Assert.Contains("Rests on:", all, StringComparison.Ordinal);
        Assert.EndsWith("Each finding with its reasons: --verbose" + Environment.NewLine, brief, StringComparison.Ordinal);
        string report = Path.Combine(scratch.Path, "r");
        Assert.DoesNotContain("\n  B/B03 ", Shell.Run("run", Shell.Demo, "--out", report, "--charts", "none").Out,
            StringComparison.Ordinal);
        Assert.Contains("\n  B/B03 ", Shell.Run("run", Shell.Demo, "--out", report, "--charts", "none", "--verbose").Out,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("short", 40)]
    [InlineData("a line of words that is wider than a console of forty columns, and more so of none", 40)]
    [InlineData("  A/A02  ≥ 39.4 dB   77.32 MHz   none   cannot be told   and more columns", 40)]
    [InlineData("  Next: a line that stands further in and goes on over the end of it, twice as long as it is wide", 45)]
    [InlineData("/a/path/without/blanks/that/is/copied/from/the/console/and/therefore/stays/whole.html", 40)]
    public void ALineIsBrokenBetweenWordsAndLosesNone(string line, int columns)
    {
        IReadOnlyList<string> pieces = WrappedLine.Of(line, columns);
        Assert.Equal(line.Trim().Replace(" ", "", StringComparison.Ordinal),
            string.Concat(pieces).Replace(" ", "", StringComparison.Ordinal));
        Assert.All(pieces, piece => Assert.Contains(piece.Trim(), line, StringComparison.Ordinal));
        Assert.All(pieces,
            piece => Assert.True(piece.Length <= columns || !piece.Trim().Contains(' ', StringComparison.Ordinal), piece));
        Assert.StartsWith(line[..(line.Length - line.TrimStart().Length)], pieces[0], StringComparison.Ordinal);
    }

    private static int Height(IEnumerable<string> lines) => lines.Sum(line => WrappedLine.Of(line, Columns).Count);

    private static int Shown(IEnumerable<string> lines, Severity severity) =>
        lines.Count(l => l.StartsWith($"{severity} (", StringComparison.Ordinal));

    private static int Counted(IEnumerable<string> lines, Severity severity)
    {
        string rest = lines.SingleOrDefault(l => l.StartsWith("Not shown here: ", StringComparison.Ordinal)) ?? string.Empty;
        Match count = Regex.Match(rest, $@"(\d+) {severity.ToString().ToLowerInvariant()}s?\b", RegexOptions.None,
            TimeSpan.FromSeconds(10));
        return count.Success ? int.Parse(count.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture) : 0;
    }
}
