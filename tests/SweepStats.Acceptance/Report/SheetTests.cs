using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using SweepStats.Acceptance.Commands;
using SweepStats.Checks;
using SweepStats.Report;
using SweepStats.Report.Findings;
using SweepStats.Report.Pages;
using SweepStats.Report.Screens;
using SweepStats.Report.Sheets;
using SweepStats.Report.Text;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>The two sheets that stand alone, and the annex behind them.</summary>
public sealed class SheetTests
{
    private const int MostWords = 700;

    private static readonly Lazy<Page> Many = new(() => new Page(Samples.Run(Samples.HundredGroups, Samples.Asking(30))));

    [Fact]
    public void TheDemoHasTwoSheetsOfAtMostSevenHundredWordsAndALightPage()
    {
        string file = Path.Combine(Repository.Root, "reports/receiver-cabin-curtain/index.html");
        string html = Regex.Replace(File.ReadAllText(file), "<!DOCTYPE[^>]*>|<meta[^>]*>", string.Empty, RegexOptions.None,
            TimeSpan.FromSeconds(9));
        XElement[] sheets = Sheets(XDocument.Parse(html));
        Assert.Equal(["Sheet 1 of 2", "Sheet 2 of 2"], sheets.Select(s => s.Attribute("aria-label")!.Value));
        Assert.InRange(sheets.Sum(Words), 300, MostWords);
        Assert.InRange(new FileInfo(file).Length, 1, 1_000_000);
    }

    [Fact]
    public void WhatIsNotStatedIsLeftToBeFilledInByHand()
    {
        XElement identity = Identity(new Page(Samples.Run(Samples.Small, Samples.Power)));
        string[] names = ["Laboratory", "Customer", "Instrument", "Calibration", "Operator", "Measured on"];
        Assert.Equal(names, identity.Descendants("dt").Select(d => d.Value));
        Assert.All(identity.Descendants("dd"), d => Assert.Equal(("blank", "______"), (d.Attribute("class")!.Value, d.Value)));
    }

    [Fact]
    public void WhatIsStatedIsShownAndHarmless()
    {
        var stated = new TestIdentity
        {
            Laboratory = "<b>Hut</b> & \u202eson",
            Customer = new string('W', 200),
            Operator = "O'Perator",
            Instrument = "no. \"4\"",
            Calibration = "17",
            Date = "5 October",
        };
        Page page = new(Samples.Run(Samples.Small, Samples.Power) with { Identity = stated });
        string[] shown = [.. Identity(page).Descendants("dd").Select(d => d.Value)];
        Assert.Equal(["<b>Hut</b> & \uFFFDson", stated.Customer, "no. \"4\"", "17", "O'Perator", "5 October"], shown);
        Assert.DoesNotContain("<b>Hut", page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain(Identity(page).Descendants("dd"), d => d.Attribute("class")!.Value == "blank");
    }

    [Fact]
    public void TheDayComesFromTheSweepsUnlessItIsStated()
    {
        AnalysisResult dated = Samples.Run(Samples.Drifting, Samples.Power);
        Assert.Equal("2026-05-12", Identity(new Page(dated)).Descendants("dd").Last().Value);
        Page days = new(Samples.Run(Samples.Drifting with { SecondsPerSweep = 40_000 }, Samples.Power));
        Assert.Matches("^2026-05-1[0-9] to 2026-05-[12][0-9]$", Identity(days).Descendants("dd").Last().Value);
        Page stated = new(dated with { Identity = new TestIdentity { Date = "in May" } });
        Assert.Equal("in May", Identity(stated).Descendants("dd").Last().Value);
    }

    [Fact]
    public void ProgramAndInputsAreNamedWhereTheyAreKnown()
    {
        AnalysisResult result = Samples.Run(Samples.Small, Samples.Power);
        Page named = new(result, new ReportOptions { Version = "7.8.9", InputDigest = "0123456789abcdef0123456789abcdef" });
        string sheet = Sheets(named.Tree)[1].Value;
        Assert.Contains("SweepStats 7.8.9 · input files: SHA-256 0123456789abcdef…", sheet, StringComparison.Ordinal);
        Assert.DoesNotContain("SHA-256", new Page(result).Words, StringComparison.Ordinal);
    }

    [Fact]
    public void ARehearsedCampaignIsMarkedOnBothSheetsAndOnEveryPrintedPage()
    {
        AnalysisResult drawn = Samples.Run(Samples.Small, Samples.Power) with { Rehearsed = true };
        Page page = new(drawn);
        Assert.All(Sheets(page.Tree),
            s => Assert.Contains(s.Descendants("span"), e => IsOf(e, "rehearsal") && e.Value == SheetWords.Mark));
        Assert.Contains(page.Tree.Descendants("div"), d => IsOf(d, "report rehearsed"));
        string style = page.Tree.Descendants("style").Single().Value;
        Assert.Contains($"@page rehearsed {{ @top-center {{ content: \"{SheetWords.Mark}\"", style, StringComparison.Ordinal);
        Assert.Contains(".rehearsed { page: rehearsed; }", style, StringComparison.Ordinal);
        Page measured = new(drawn with { Rehearsed = false });
        Assert.DoesNotContain(measured.Tree.Descendants(), e => IsOf(e, "rehearsal") || IsOf(e, "report rehearsed"));
    }

    [Fact]
    public void WhatDoesNotApplyIsAbsent()
    {
        string[] single = Sections(new Page(Samples.Run(Samples.Small, Samples.Power)));
        string[] absent = ["sheet-lots", "sheet-choice", "sheet-trend", "lots", "choice", "trend", "field"];
        Assert.Empty(single.Intersect(absent));
        string[] washed = Sections(new Page(Samples.Run(Samples.Washed, Samples.AlongCycles(40))));
        Assert.All(["sheet-trend", "sheet-lots", "sheet-choice", "trend"], s => Assert.Contains(s, washed));
        string[] oneLot = Sections(new Page(Samples.Run(Samples.Lots with { Lots = 1 }, Samples.Power)));
        Assert.Contains("sheet-choice", oneLot);
        Assert.DoesNotContain("sheet-lots", oneLot);
    }

    [Fact]
    public void TheAnnexIsFoldedAndItsContentsLeadToEverySection()
    {
        Page page = new(Samples.Run(Samples.Lots, Samples.Choosing));
        XElement annex = page.Tree.Descendants("article").Last();
        IEnumerable<XElement> summaries = annex.Elements("section").Select(s => s.Element("details")!.Element("summary")!);
        string[] folded = [.. summaries.Select(s => s.Element("h2")!.Attribute("id")!.Value)];
        string[] contents = [.. annex.Elements("ul").First().Descendants("a").Select(a => a.Attribute("href")!.Value)];
        Assert.Equal(folded.Select(id => "#" + id), contents);
        Assert.Equal(folded.Length, annex.Elements("section").Count());
        Assert.All(annex.Elements("section").Elements("details"), d => Assert.Null(d.Attribute("open")));
    }

    [Fact]
    public void OfManySpecimensTheSheetShowsTheWeakestAndCountsTheOthers()
    {
        XElement sheet = Sheets(Many.Value.Tree)[0];
        XElement[] rows = [.. sheet.Descendants("tbody").Single().Elements("tr")];
        Assert.InRange(rows.Length, 4, 12);
        AnalysisResult result = Samples.Run(Samples.HundredGroups, Samples.Asking(30));
        string[] weakest =
            [.. FirstScreenWords.WeakestFirst(result).Take(rows.Length).Select(i => result.Bands[i].Name.ToString())];
        Assert.Equal(weakest, rows.Select(r => r.Element("th")!.Value));
        Assert.Contains($"The other {32 - rows.Length} specimens: each at least ", sheet.Value, StringComparison.Ordinal);
        Assert.All(rows, r => Assert.NotEmpty(r.Descendants("svg").Single().Attribute("aria-label")!.Value));
    }

    [Fact]
    public void FindingsOnTheSheetAreThoseOfTheFirstScreenInItsOrder()
    {
        AnalysisResult result = Samples.Run(Samples.Odd with { LimitDbm = -30, ReferenceRippleDb = 6 }, Samples.Power);
        FindingGroup[] groups = [.. FindingGroup.Of(result.Findings).Where(g => g.Severity != Severity.Note)];
        XElement[] items = [.. Sheets(new Page(result).Tree)[0].Descendants("ol").Single().Elements("li")];
        string[] untested = [.. result.Verdict.Untested.Select(_ => "Not tested: ")];
        string[] starts = [.. groups.Select(g => $"{g.Severity} ({g.Code})"), .. untested];
        Assert.NotEmpty(groups);
        Assert.Equal(Math.Min(5, starts.Length), items.Length);
        Assert.All(items.Zip(starts), both => Assert.StartsWith(both.Second, both.First.Value, StringComparison.Ordinal));

        Assert.All(items, i => Assert.StartsWith("Next: ", i.Element("b")!.Value, StringComparison.Ordinal));
    }

    // Nothing found by checks that could not be made is no reason to do nothing.
    [Fact]
    public void WhatNothingTestedIsOnTheSheetWithItsNextStep()
    {
        AnalysisResult result = Samples.Run(Samples.Small, Samples.Power);
        string[] items = [.. Sheets(new Page(result).Tree)[0].Descendants("li").Select(i => i.Value)];
        Assert.Contains(UntestedDoubt.Leakage, result.Verdict.Untested);
        Assert.Contains("Not tested: leakage round the specimen. Next: Put a solid metal plate in place of the specimen and "
            + "take plate sweeps.", items);
        Assert.Equal(result.Verdict.Untested.Length, items.Count(i => i.StartsWith("Not tested: ", StringComparison.Ordinal)));
    }

    [Fact]
    public void WhereNothingMayBeReliedOnNoPictureOfLotsOrChoiceStandsOnTheSheet()
    {
        AnalysisResult result = Samples.Run(Samples.Overloaded with { Lots = 2, SpecimensPerLot = 2 }, Samples.Asking(40));
        Assert.Equal(Verdicts.Trust.Untrustworthy, result.Verdict.Trust);
        XElement[] sheets = Sheets(new Page(result).Tree);
        Assert.Empty(sheets[1].Descendants("figure"));
        Assert.StartsWith("At face value only", sheets[0].Descendants("figcaption").Single().Value, StringComparison.Ordinal);
        Assert.StartsWith("At face value only", sheets[0].Descendants("caption").Single().Value, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(HardCampaignTests.Names), MemberType = typeof(HardCampaignTests))]
    public void EveryPictureOfThePageSaysWhatItShowsAndStaysInItsFrame(string name)
    {
        IEnumerable<XElement> elements = new Page(HardCampaignTests.Of(name)).Tree.Descendants();
        foreach (XElement svg in elements.Where(e => e.Name.LocalName == "svg" && e.Attribute("class") is not null))
        {
            Assert.NotEmpty(svg.Attribute("aria-label")!.Value);
            double[] box =
                [.. svg.Attribute("viewBox")!.Value.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture))];
            foreach (XElement text in svg.Descendants().Where(e => e.Name.LocalName == "text"))
            {
                Assert.InRange((double)text.Attribute("x")!, 0, box[2]);
                Assert.InRange((double)text.Attribute("y")!, 8, box[3]);
            }

            IEnumerable<XElement> circles = svg.Descendants().Where(e => e.Name.LocalName == "circle");
            Assert.All(circles, c => Assert.InRange((double)c.Attribute("cy")!, 0, box[3]));
        }
    }

    [Fact]
    public void NamesAreShortenedSoThatTheyStayDifferent()
    {
        Assert.Equal(["a", "b"], ShortNames.Of(["a", "b"], 5));
        string[] alike = ["a very long name of cloth 1", "a very long name of cloth 2"];
        IReadOnlyList<string> cut = ShortNames.Of(alike, 10);
        Assert.Equal(["a ve…oth 1", "a ve…oth 2"], cut);
    }

    [Fact]
    public void AFloorOfSweepsThatDisagreeIsNotShownAsOneLevelAlone()
    {
        Campaign drawn = Rehearsal.Rehearser.Draw(Samples.Small with { FloorSweeps = 5 }).Campaign;
        Sweep[] raised = [.. drawn.Sweeps.Where(s => s.Role == SweepRole.Floor).Where((_, j) => j is 1 or 3)];
        Campaign apart = drawn with
        {
            Sweeps = [.. drawn.Sweeps.Select(
                s => raised.Contains(s) ? new Sweep(s.Name, s.Role, s.Grid, [.. s.Levels.Select(l => l + 6)], s.Scale) : s)],
        };
        Assert.Matches(@"measured, .*; its sweeps lie up to 6\.\d dB apart",
            new Page(Analysis.Run(apart, Samples.Power)).Tree.Root!.Value);
        Assert.DoesNotContain("dB apart", new Page(Analysis.Run(drawn, Samples.Power)).Tree.Root!.Value,
            StringComparison.Ordinal);
    }

    [Fact]
    public void StandardsOnTheSheetAreThoseOfTheSources()
    {
        MatchCollection named =
            Regex.Matches(SheetWords.Standards, "[0-9]+[-:][0-9]{4}", RegexOptions.None, TimeSpan.FromSeconds(9));
        Assert.Equal(4, named.Count);
        foreach (Match standard in named)
        {
            Assert.Contains(PageWords.Sources, s => s.Contains(standard.Value, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void TheSamePageComesOfTheSameInput()
    {
        string[] pages = [.. Enumerable.Range(0, 2).Select(_ => Built())];
        Assert.Equal(pages[0], pages[1]);
    }

    private static string Built()
    {
        using var scratch = new Files.ScratchFolder();
        string report = Path.Combine(scratch.Path, "r");
        Assert.Equal(0, Shell.Run("run", Shell.Demo, "--out", report).Code);
        return File.ReadAllText(Path.Combine(report, "index.html"));
    }

    private static XElement[] Sheets(XDocument tree) => [.. tree.Descendants("article").Where(a => IsOf(a, "sheet"))];

    private static bool IsOf(XElement element, string kind) => element.Attribute("class")?.Value == kind;

    private static XElement Identity(Page page) => Sheets(page.Tree)[0].Descendants("dl").First();

    private static string[] Sections(Page page) =>
        [.. page.Tree.Descendants("section").Select(s => s.Attribute("aria-labelledby")!.Value)];

    private static int Words(XElement sheet) => sheet.DescendantNodes().OfType<XText>()
        .Where(t => t.Ancestors().All(a => a.Name.LocalName is not ("svg" or "script")))
        .Sum(t => t.Value.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Count(w => w.Any(char.IsLetterOrDigit)));
}
