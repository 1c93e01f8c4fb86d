using System.Xml.Linq;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Report.Choice;
using SweepStats.Report.History;
using SweepStats.Report.Lots;
using SweepStats.Report.Screens;
using SweepStats.Report.Text;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>Sentences on lots say no more than was computed, and stand where a reader looks for them.</summary>
public sealed class LotWordingTests
{
    private static readonly Lazy<AnalysisResult> Drawn = new(() => Samples.Run(Samples.Lots, Samples.Power));

    private static LotComparison Four => Drawn.Value.Lots;

    private static AnalysisResult With(LotComparison lots) => Drawn.Value with { Lots = lots };

    [Fact]
    public void WhereTheReferenceWasSweptOnceTheCellsSaySo()
    {
        LotBand once = Four.Whole with
        {
            SharedErrorDb = null,
            Lots = [.. Four.Whole.Lots.Select(l =>
                l with { MeanIntervalDb = null, ToleranceLimitDb = null, BetweenLotsIntervalDb = new Interval(40.19, 42.01) })],
        };
        Assert.Contains("for comparing lots", LotWords.LotColumns(Four.Question, once));
        IReadOnlyList<string> row = LotWords.LotRow(once.Lots[0], once);
        Assert.Equal(["unknown: reference swept once", "40.1 to 42.1 dB", "unknown: reference swept once"], row.Skip(3).Take(3));
        Assert.Contains(LotRemarkWords.LotRemarks(Drawn.Value, once),
            r => r.StartsWith("How far the reference is off nobody can tell: it was swept once. Sweep it twice or more.",
                StringComparison.Ordinal));
    }

    [Fact]
    public void UnderAFaultNothingIsSaidOfWhetherLotsDiffer()
    {
        AnalysisResult faulty = Drawn.Value with { Verdict = Drawn.Value.Verdict with { Trust = Verdicts.Trust.Untrustworthy } };
        const string Mend = "first: until then whether the lots differ cannot be told.";
        Assert.Contains(Mend, Assert.Single(LotAnswerWords.LotsAnswer(faulty)), StringComparison.Ordinal);
        CampaignLots[] two =
            [.. new[] { "one", "two" }.Select(label => new CampaignLots(label, Drawn.Value.Campaign, Drawn.Value.Curves))];
        LotHistory together = LotHistoryComparer.Of(two, Four.Question);
        Assert.StartsWith($"Mend the faults of two {Mend}",
            Assert.Single(HistoryAnswerWords.HistoryAnswer(together, [Drawn.Value, faulty])), StringComparison.Ordinal);
        Assert.DoesNotContain(HistoryAnswerWords.HistoryAnswer(together, [Drawn.Value, Drawn.Value]),
            line => line.Contains(Mend, StringComparison.Ordinal));
    }

    [Fact]
    public void BothIntervalsStandWhereTheyDiffer()
    {
        LotBand Band(Interval whole) => Four.Whole with
        {
            SharedErrorDb = 1.5,
            Lots = [.. Four.Whole.Lots.Select(
                l => l with { MeanIntervalDb = whole, BetweenLotsIntervalDb = new Interval(40.19, 42.01) })],
        };
        LotBand apart = Band(new Interval(39.19, 43.01)), alike = Band(new Interval(40.18, 42.02));
        Assert.Equal(["39.1 to 43.1 dB", "40.1 to 42.1 dB"], LotWords.LotRow(apart.Lots[0], apart).Skip(3).Take(2));
        Assert.DoesNotContain("for comparing lots", LotWords.LotColumns(Four.Question, alike));
        Assert.Equal(6, LotWords.LotRow(alike.Lots[0], alike).Count);
        Assert.Contains("Intervals of means and promises hold what all specimens share: reference, floor and stated errors, "
            + "±1.5 dB (95 %). It drops out between lots; \"for comparing lots\" leaves it out.",
            LotRemarkWords.LotRemarks(Drawn.Value, apart));
    }

    [Fact]
    public void ALotOfOneSpecimenBorrowsItsScatterAndThatIsSaid()
    {
        LotBand one = Four.Whole with { Lots = [Four.Whole.Lots[0] with { Specimens = 1 }, .. Four.Whole.Lots[1..]] };
        Assert.Contains("One specimen shows no scatter: that of lot A is taken to be at most twice that of the others. Take a "
            + "second specimen.", LotRemarkWords.LotRemarks(Drawn.Value, one));
        Assert.DoesNotContain(LotRemarkWords.LotRemarks(Drawn.Value, Four.Whole),
            r => r.StartsWith("One specimen", StringComparison.Ordinal));
    }

    [Fact]
    public void LimitsAreRoundedAwayFromTheClaim()
    {
        LotSummary lot = Four.Whole.Lots[0] with
        {
            MeanDb = 41.24,
            MeanIntervalDb = new Interval(40.19, 42.01),
            ToleranceLimitDb = 38.99,
            PlainMeanDb = 41.26,
        };
        Assert.Equal(["A", "4", "41.2 dB", "40.1 to 42.1 dB", "38.9 dB", "41.3 dB"], LotWords.LotRow(lot));
        Assert.Equal("nothing", LotWords.LotRow(lot with { ToleranceLimitDb = -0.1 })[4]);
        Assert.Equal(Printed.Nothing,
            LotWords.LotRow(
                lot with { ToleranceLimitDb = null, MeanIntervalDb = null, BetweenLotsIntervalDb = null, Specimens = 1 })[4]);
        Assert.Equal(Printed.Nothing,
            LotWords.LotRow(lot with { MeanDb = double.NaN, MeanIntervalDb = null, BetweenLotsIntervalDb = null })[2]);
    }

    [Theory]
    [InlineData("Lot B shields about 5.5 dB less than the mean of the others from 30 MHz to 50 MHz.", "B", -5.46, false, 50e6)]
    [InlineData("Lot B shields about 5.5 dB less than the mean of the others from 30 MHz to 50 MHz, as much or more where the "
        + "floor hides a specimen.", "B", -5.49, true, 50e6)]
    [InlineData("Lot C shields about 3.0 dB more than the mean of the others at 30 MHz, as much or more where the floor hides a "
        + "specimen.", "C", 2.99, true, 30e6)]
    [InlineData("They differ from 30 MHz to 50 MHz; the floor hides by how much.", null, -5, true, 50e6)]
    public void AStretchSaysSoWhereABoundStandsIn(string sentence, string? lot, double apart, bool atLeast, double stop)
    {
        LotStretch stretch = new(new FrequencyBand(new Hertz(30e6), new Hertz(stop)), 4, lot, apart, atLeast);
        Assert.Contains(sentence, LotAnswerWords.LotsAnswer(With(Four with { Stretches = [stretch] })));
    }

    [Fact]
    public void ThreeStretchesAreToldAndWhatIsHiddenOnlyWhereNothingElseIs()
    {
        LotStretch At(double start, string? lot) => new(new FrequencyBand(new Hertz(start), new Hertz(start)), 4, lot, -5, false);
        string[] told =
            [.. LotAnswerWords.LotsAnswer(
                With(Four with { Stretches = [At(1e8, null), At(2e8, "A"), At(3e8, "B"), At(4e8, "C"), At(5e8, "D")] }))];
        Assert.Equal(["A", "B", "C"],
            told.Where(t => t.StartsWith("Lot ", StringComparison.Ordinal) && t != LotAnswerWords.LotToTake(Drawn.Value))
                .Select(t => t.Split(' ')[1]));
        Assert.DoesNotContain(told, t => t.Contains("hides by how much", StringComparison.Ordinal));
        Assert.Contains("There is more: column p_adjusted of lots-by-frequency.csv, which 'sweepstats run' writes.", told);
    }

    [Fact]
    public void TheLotToTakeIsNamedBandByBand()
    {
        const string Start = "Lot to take, by the mean where no specimen is hidden (95 %): ";
        string? Said(params LotBand[] bands) => LotAnswerWords.LotToTake(With(Four with { Bands = [.. bands] }));
        LotBand Band(string? name, params string[] foremost) => Four.Whole with { Name = name, Foremost = [.. foremost] };
        string[] all = [.. Four.Whole.Lots.Select(l => l.Lot)];
        Assert.Equal(Start + "B.", Said(Band(null, "B")));
        Assert.Equal(Start + "none shown better.", Said(Band(null, all)));
        string Several(string answers) => Start.Replace("95 %", "95 % each", StringComparison.Ordinal) + answers;
        Assert.Equal(Several("computers: B or A; whole band: none shown better."),
            Said(Band(null, all), Band("computers", "B", "A")));
        Assert.Equal(Several("computers: cannot be told; whole band: A."), Said(Band(null, "A"), Band("computers")));
        Assert.Null(Said(Band(null)));
        LotBand[] six = [Band(null, "A"), .. Enumerable.Range(1, 5).Select(i => Band($"b{i}", "B"))];
        Assert.EndsWith("b4: B; 2 more: lots.csv.", Said(six), StringComparison.Ordinal);
        AnalysisResult faulty = Drawn.Value with { Verdict = Drawn.Value.Verdict with { Trust = Verdicts.Trust.Untrustworthy } };
        Assert.Null(LotAnswerWords.LotToTake(faulty));
    }

    // Stray placements or copies make lots differ that do not.
    [Fact]
    public void NoLotIsNamedBeforeWhatMisleadsIsSettled()
    {
        Checks.Finding wrong = Drawn.Value.Findings[0] with { Misleads = true };
        AnalysisResult misled = Drawn.Value with { Findings = [wrong] };
        Assert.True(Drawn.Value.MayPrefer);
        Assert.False(misled.MayPrefer);
        Assert.Null(LotAnswerWords.LotToTake(misled));
        Assert.NotNull(LotAnswerWords.LotToTake(Drawn.Value with { Findings = [wrong with { Misleads = false }] }));
    }

    [Fact]
    public void TheLotToTakeStandsOnTheFirstScreenAndOnSheetTwo()
    {
        string told = LotAnswerWords.LotToTake(Drawn.Value)!;
        Assert.Contains(told, FirstScreenWords.FirstScreen(Drawn.Value, 100, ["Report: index.html"]));
        Assert.Contains(told, LotWords.LotsText(Drawn.Value));
        Assert.DoesNotContain(told, LotAnswerWords.LotsInBrief(Drawn.Value));
    }

    [Theory]
    [InlineData(0.05, "The lots differ (p = 0.05).")]
    [InlineData(0.00004, "The lots differ (p < 0.0001).")]
    [InlineData(0.0511, "No difference between the lots shows (p = 0.051). That does not prove them alike.")]
    [InlineData(1.0, "No difference between the lots shows (p = 1). That does not prove them alike.")]
    public void TheHeadlineFollowsTheLevel(double p, string sentence) =>
        Assert.StartsWith(sentence, LotAnswerWords.LotsHeadline(Drawn.Value, Four.Whole with { Probability = p }),
            StringComparison.Ordinal);

    [Fact]
    public void FiguresSayWhichPartOfTheBandTheyAreOf()
    {
        Assert.Equal("Every specimen is bounded from both sides at every measured frequency.", LotWords.ClearPart(Four.Whole));
        Assert.Equal("Figures are of the 62.5 % of this band where every specimen is bounded from both sides.",
            LotWords.ClearPart(Four.Whole with { ClearShare = 0.625 }));
        Assert.StartsWith("At every measured frequency some specimen is known from below only",
            LotWords.ClearPart(Four.Whole with { ClearShare = 0 }), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.2, 0.1, "Means shown to be within ±1 dB of each other: A and B.")]
    [InlineData(3, 0.1, "Means shown not to be within ±1 dB of each other: A and B.")]
    [InlineData(0.9, 0.1, "Undecided whether their means are within ±1 dB of each other: A and B.")]
    [InlineData(0.2, 2, "Undecided whether their means are within ±1 dB of each other: A and B.")]
    public void NoDifferenceIsNotTheSame(double difference, double error, string sentence)
    {
        LotBand band = Four.Whole with { Pairs = [new LotPair("A", "B", new Equivalence(difference, error, 6, 1))] };
        Assert.Contains(sentence, LotRemarkWords.LotRemarks(Drawn.Value, band));
        Assert.Contains(sentence, LotRemarkWords.LotRemarks(Drawn.Value,
            Four.Whole with { Pairs = [new LotPair("A", "B", new Equivalence(-difference, error, 6, 1))] }));
    }

    [Fact]
    public void PlainMeansAreShownForWhatTheyHide()
    {
        LotStretch stretch = new(new FrequencyBand(new Hertz(30e6), new Hertz(50e6)), 4, "B", -6, false);
        LotComparison Plain(params double[] means) => Four with
        {
            Stretches = [stretch],
            Bands = [Four.Whole with { Lots = [.. Four.Whole.Lots.Zip(means, (l, m) => l with { PlainMeanDb = m })] }],
        };
        Assert.Contains("Plain means of all readings hide it: A 50.0 dB, B 50.5 dB, C 50.0 dB, D 50.0 dB.",
            LotAnswerWords.LotsAnswer(With(Plain(50, 50.5, 50, 50))));
        Assert.Contains(LotAnswerWords.LotsAnswer(With(Plain(50, 49, 50, 50))),
            t => t.StartsWith("Plain means of all readings show little of it: ", StringComparison.Ordinal));
        Assert.DoesNotContain(LotAnswerWords.LotsAnswer(With(Plain(50, 46, 50.5, 50))),
            t => t.StartsWith("Plain means", StringComparison.Ordinal));
    }

    [Fact]
    public void StandingNamesWhoPassesTheLimits()
    {
        LotBand whole = Four.Whole;
        GroupStanding standing = whole.SpecimenStanding!;
        GroupStanding Arranged(double h, double k) => standing with
        {
            Members = [standing.Members[0] with { H = h, K = k }, .. standing.Members[1..].Select(m => m with { H = 0, K = 1 })],
            Grubbs = (1, standing.Members[0].Name, 1),
            Cochran = (0.1, standing.Members[0].Name, 1),
        };
        string Said(GroupStanding arranged) => LotRemarkWords.LotRemarks(Drawn.Value, whole with { SpecimenStanding = arranged })
            .Single(r => r.StartsWith("Among the specimens", StringComparison.Ordinal));
        Assert.Contains("no mean and no scatter is out of line",
            Said(Arranged(standing.CriticalH.Straggler - 0.01, standing.Members[0].CriticalK.Straggler - 0.01)),
            StringComparison.Ordinal);
        Assert.Contains("past the 5 % limit, as one in twenty is by chance: A/A01 (mean low)",
            Said(Arranged(-standing.CriticalH.Straggler - 0.01, 1)), StringComparison.Ordinal);
        Assert.Contains("past the 1 % limit: A/A01 (mean high), A/A01 (scatters)",
            Said(Arranged(standing.CriticalH.Outlier + 0.01, standing.Members[0].CriticalK.Outlier + 0.01)),
            StringComparison.Ordinal);
        Assert.Contains("past the 1 % limit: A/A01 (mean outermost)", Said(Arranged(0, 1) with { Grubbs = (3, "A/A01", 0.009) }),
            StringComparison.Ordinal);
        Assert.Contains("past the 1 % limit: A/A01 (scatters most)",
            Said(Arranged(0, 1) with { Cochran = (0.61, "A/A01", 0.009) }), StringComparison.Ordinal);
        Assert.DoesNotContain("scatters", Said(Arranged(0, 1) with { Cochran = (0.61, "A/A01", 0.051) }),
            StringComparison.Ordinal);
    }

    [Fact]
    public void EachGroupIsHeldToItsOwnLimitAndUnequalMeansAreSaid()
    {
        LotBand whole = Four.Whole;
        GroupStanding standing = whole.SpecimenStanding!;
        string Said(params (int Count, double Straggler)[] first) => LotRemarkWords.LotRemarks(Drawn.Value, whole with
        {
            SpecimenStanding = standing with
            {
                Members = [.. standing.Members.Select((m, i) => m with
                {
                    H = 0,
                    K = 1.5,
                    Count = i < first.Length ? first[i].Count : 3,
                    CriticalK = new(i < first.Length ? first[i].Straggler : 1.6, 2),
                })],
                Grubbs = (1, standing.Members[0].Name, 1),
                Cochran = (0.1, standing.Members[0].Name, 1),
            },
        }).Single(r => r.StartsWith("Among the specimens", StringComparison.Ordinal));
        Assert.EndsWith(": A/A02 (scatters). The means are compared as equally precise, though they are of different numbers "
            + "of values.", Said((2, 1.8), (9, 1.4)), StringComparison.Ordinal);
        Assert.EndsWith("no mean and no scatter is out of line.", Said(), StringComparison.Ordinal);
    }

    [Fact]
    public void ThePageHasItsSectionsAndTheSecondSheetAnswersBeforeThem()
    {
        Page page = new(Samples.Run(Samples.Lots, Samples.Choosing));
        XElement lots = Section(page, "lots"), choice = Section(page, "choice");
        Assert.Equal(["#lots", "#choice"], Links(page.Tree.Root!));
        Assert.All(["lots", "choice"], id => Assert.Single(page.Tree.Descendants(), e => e.Attribute("id")?.Value == id));
        Assert.Equal(2, lots.Descendants("h3").Count());
        Assert.Equal(2, choice.Descendants("h3").Count());
        Assert.Equal(["lots", "lots-over-frequency"], Charts(lots).Take(2).Order(StringComparer.Ordinal));
        Assert.Equal(["choice"], Charts(choice));
        Assert.Contains(choice.Descendants("a"), a => a.Attribute("href")!.Value == "charts/choice-upper-half-x.svg");
        AnalysisResult result = Samples.Run(Samples.Lots, Samples.Choosing);
        Assert.All(LotAnswerWords.LotsAnswer(result),
            sentence => Assert.Contains(sentence, lots.Value, StringComparison.Ordinal));
        Assert.All(LotAnswerWords.LotsInBrief(result),
            sentence => Assert.Contains(sentence, Section(page, "sheet-lots").Value, StringComparison.Ordinal));
        Assert.All(ChoiceWords.ChoiceAnswer(result, result.Choice!.Bands[0]),
            sentence => Assert.Contains(sentence, Section(page, "sheet-choice").Value, StringComparison.Ordinal));
    }

    [Fact]
    public void OfASingleSpecimenThePageSpeaksOfNeither()
    {
        Page page = new(Samples.Run(Samples.Small, Samples.Power));
        Assert.Empty(Links(page.Tree.Root!));
        Assert.DoesNotContain(page.Tree.Descendants("section"),
            s => s.Attribute("aria-labelledby")!.Value is "choice" or "lots" or "sheet-choice" or "sheet-lots");
    }

    private static XElement Section(Page page, string id) =>
        page.Tree.Descendants("section").Single(s => s.Attribute("aria-labelledby")!.Value == id);

    private static IEnumerable<string> Links(XElement section) =>
        section.Descendants("a").Select(a => a.Attribute("href")!.Value).Where(h => h is "#lots" or "#choice");

    private static string[] Charts(XElement section) =>
        [.. section.Descendants("figure").Select(f => f.Attribute("id")!.Value["chart-".Length..])];
}
