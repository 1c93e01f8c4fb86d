using System.Text.RegularExpressions;
using System.Xml.Linq;
using SweepStats.Quantities;
using SweepStats.Report;
using SweepStats.Report.Screens;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>Campaigns that are small, odd or hostile still give a whole report.</summary>
public sealed class HardCampaignTests
{
    private static readonly Regex Broken =
        new(@"\bNaN\b|Infinity|∞|-∞|\bnull\b|System\.", RegexOptions.Compiled, TimeSpan.FromSeconds(60));

    public static TheoryData<string> Names => [.. Campaigns.Keys];

    private static readonly Dictionary<string, Func<AnalysisResult>> Campaigns = new()
    {
        ["one point"] = () => Samples.Run(Samples.Small with { Points = 1 }, Samples.Asking(40)),
        ["three points"] = () => Samples.Run(Samples.Small with { Points = 3, ShieldingStopDb = 75 }, Samples.Asking(40)),
        ["single sweeps"] =
            () => Samples.Run(Samples.Small with { FloorSweeps = 1, ReferenceSweeps = 1, CoveredSweeps = 1 }, Samples.Asking(40)),
        ["no floor"] = () => Samples.Run(Samples.Small with { FloorSweeps = 0 }, Samples.Asking(40)),
        ["declared floor"] =
            () => Samples.Run(Samples.Small with { FloorSweeps = 0 }, Samples.Power with { DeclaredFloorDb = -100 }),
        ["no range"] = () => Samples.Run(Samples.Small with { ReferenceDbm = -100 }, Samples.Asking(40)),
        ["narrow"] =
            () => Samples.Run(Samples.Small with { Band = new FrequencyBand(new Hertz(2.4e9), new Hertz(2.5e9)) }, Samples.Power),
        ["long"] = () => Samples.Run(Samples.Small with { Points = 4001, ShieldingStopDb = 80 }, Samples.Power),
        ["twenty specimens"] =
            () => Samples.Run(Samples.Small with { Lots = 2, SpecimensPerLot = 10, Points = 5 }, Samples.Power),
        ["odd sweeps"] = () => Samples.Run(Samples.Odd, Samples.Power),
        ["odd sweeps, hostile names"] = () => Samples.Renamed(Samples.Odd, Hostile),
        ["drift by the clock"] = () => Samples.Run(Samples.Drifting, Samples.Power),
        ["drift by order"] = () => Samples.Run(Samples.Drifting with { StartsAt = null }, Samples.Power),
        ["drift over days"] = () => Samples.Run(Samples.Drifting with { SecondsPerSweep = 40_000 }, Samples.Power),
        ["drift over seconds"] = () => Samples.Run(Samples.Drifting with { SecondsPerSweep = 2 }, Samples.Power),
        ["two sweeps of each"] =
            () => Samples.Run(Samples.Small with { FloorSweeps = 2, ReferenceSweeps = 2, CoveredSweeps = 2, DriftDb = 5 },
                Samples.Power),
        ["a hundred groups"] = () => Samples.Run(Samples.HundredGroups, Samples.Power),
        ["a hundred groups, side by side"] = () => Samples.Run(Samples.HundredGroups with { StartsAt = null }, Samples.Power),
        ["eighty sweeps"] = () => Samples.Run(Samples.Odd with { ReferenceSweeps = 80, CoveredSweeps = 40 }, Samples.Power),
        ["overload"] = () => Samples.Run(Samples.Overloaded, Samples.Power),
        ["overload from single sweeps"] = () => Samples.Run(Samples.Overloaded with { LinearitySweeps = 1 }, Samples.Power),
        ["overload, limits beyond the frame"] =
            () => Samples.Run(Samples.Overloaded with { LinearitySweeps = 2, SweepDeviationDb = 1 }, Samples.Power),
        ["flat tops"] = () => Samples.Run(Samples.Odd with { LimitDbm = -30, ReferenceRippleDb = 6 }, Samples.Power),
        ["hostile names"] = () => Samples.Renamed(Hostile),
        ["budgets everywhere"] =
            () => Samples.Run(Samples.Small with { ShieldingStopDb = 85 },
                Samples.Power with { BudgetFrequencies = [new Hertz(30e6), new Hertz(500e6), new Hertz(700e6), new Hertz(1e9)] }),
        ["lots, a yardstick and a band"] = () => Samples.Run(Samples.Lots, Samples.Choosing),
        ["lots, capped in part"] =
            () => Samples.Run(Samples.Lots with { ShieldingStopDb = 80 },
                Samples.Choosing with { Requirement = Samples.Asking(40).Requirement }),
        ["lots, capped everywhere"] = () => Samples.Run(Samples.Lots with { ShieldingStartDb = 110 }, Samples.Choosing),
        ["lots without floor"] = () => Samples.Run(Samples.Lots with { FloorSweeps = 0 }, Samples.Choosing),
        ["lots of single sweeps"] =
            () => Samples.Run(Samples.Lots with { FloorSweeps = 1, ReferenceSweeps = 1, CoveredSweeps = 1, Placements = 0 },
                Samples.Choosing),
        ["lots, reference in the floor"] = () => Samples.Run(Samples.Lots with { ReferenceDbm = -100 }, Samples.Choosing),
        ["forty lots of two"] =
            () => Samples.Run(Samples.Lots with
            {
                Points = 5,
                Lots = 40,
                SpecimensPerLot = 2,
                SpecimenDeviationDb = 2,
                CoveredSweeps = 1,
            }, Samples.Choosing),
        ["seventy specimens of a lot"] = () =>
            Samples.Run(Samples.Lots with { Points = 5, Lots = 1, SpecimensPerLot = 70, CoveredSweeps = 1 }, Samples.Choosing),
        ["lots at one frequency"] = () => Samples.Run(Samples.Lots with { Points = 1 }, Samples.Power),
        ["lots, hostile names"] = () => Samples.Renamed(Samples.Lots, Hostile),
        ["a trend"] = () => Samples.Run(Samples.Washed, Samples.AlongCycles(40)),
        ["a trend, hidden in part"] =
            () => Samples.Run(Samples.Washed with { ShieldingStopDb = 84 },
                Samples.AlongCycles(40) with { GuardBand = new Decibels(1) }),
        ["a trend, hidden everywhere"] =
            () => Samples.Run(Samples.Washed with { ShieldingStartDb = 90, ShieldingStopDb = 90 }, Samples.AlongCycles(40)),
        ["a trend at one frequency"] = () => Samples.Run(Samples.Washed with { Points = 1 }, Samples.AlongCycles(40)),
        ["a trend without a requirement"] =
            () => Samples.Run(Samples.Washed with { Cycles = [0, 0.0005, 0.001, 0.002, 0.003], WearDb = 2000 },
                Samples.AlongCycles(40) with { Requirement = null }),
        ["a trend along no straight line"] =
            () => Samples.Run(Samples.Washed with { Cycles = [0, 1, 900, 901, 40000], WearDb = 0.0002 }, Samples.AlongCycles(40)),
        ["too little for a trend"] = () => Samples.Run(Samples.Washed with { Lots = 1, Cycles = [7] }, Samples.AlongCycles(40)),
        ["a trend and a reference swept once"] =
            () => Samples.Run(Samples.Washed with { ReferenceSweeps = 1 }, Samples.AlongCycles(40)),
        ["unknown averaging"] = () => Samples.Run(Samples.Small, new AnalysisPlan()),
    };

    internal static AnalysisResult Of(string name) => Campaigns[name]();

    [Theory]
    [MemberData(nameof(Names))]
    public void TheReportIsWholeAndHasNoBrokenNumber(string name)
    {
        Page page = new(Campaigns[name]());
        Assert.True(page.Charts.Count() >= 3);
        foreach (string text in page.Charts.Select(f => page.Text(f.Path)).Prepend(page.Words))
        {
            Assert.DoesNotMatch(Broken, text);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void EveryLegendSaysSomethingAndLabelsStayInThePicture(string name)
    {
        Page page = new(Campaigns[name]());
        foreach (ReportFile file in page.Charts)
        {
            XElement svg = XDocument.Load(new MemoryStream(file.Content)).Root!;
            XElement[] texts = [.. svg.Descendants().Where(e => e.Name.LocalName == "text")];
            Assert.All(texts, t => Assert.NotEmpty(t.Value.Trim()));
            Assert.All(texts, t => Assert.True(ChartText.IsInside(t, svg), $"{file.Path}: {t.Value}"));
            Assert.All(texts, t => Assert.True(ChartText.Size(t) >= 12, $"{file.Path}: {t.Value}"));
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void NoTwoLabelsOfAChartOverlap(string name)
    {
        Page page = new(Campaigns[name]());
        foreach (ReportFile file in page.Charts)
        {
            XElement[] texts =
                [.. XDocument.Load(new MemoryStream(file.Content)).Root!.Descendants().Where(e => e.Name.LocalName == "text")];
            TextBox[] boxes = [.. texts.Select(ChartText.Box)];
            for (int i = 0; i < texts.Length; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    if (boxes[i].Overlaps(boxes[j]))
                    {
                        Assert.Fail($"{file.Path}: {texts[i].Value} and {texts[j].Value}");
                    }
                }
            }
        }
    }

    [Fact]
    public void HostileNamesAreEscapedEverywhereAndGiveSafeFileNames()
    {
        Page page = new(Samples.Renamed(Hostile));
        Assert.DoesNotContain("<script>alert", page.Html, StringComparison.OrdinalIgnoreCase);
        Assert.Single(page.Tree.Descendants("script"), s => s.Attribute("type") is null);
        Assert.Contains("&lt;script&gt;", page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain(page.Tree.Descendants().Attributes(),
            a => a.Name.LocalName.StartsWith("on", StringComparison.Ordinal));
        Assert.DoesNotContain(page.Tree.Descendants(), e => e.Name.LocalName is "sub" or "sup");
        Assert.DoesNotContain('\u001b', page.Html);
        Assert.DoesNotContain('\u202e', page.Html);
        Assert.All(page.Files.Skip(1), f => Assert.Matches("^charts/[a-z0-9-]{1,120}\\.svg$", f.Path));
        Assert.All(SummaryWords.Summary(Samples.Renamed(Hostile)), line => Assert.DoesNotContain(line, char.IsControl));
    }

    [Fact]
    public void NamesThatDifferOnlyInWhatFileSystemsIgnoreGetDistinctFiles()
    {
        var names = new FileNames();
        string[] taken = [names.Next("levels", "A", "b"), names.Next("levels", "a", "B"), names.Next("levels", "a-b"),
            names.Next("levels", "..", "/"), names.Next("levels", "ä", "ß")];
        Assert.Equal(taken.Length, taken.Distinct().Count());
        Assert.Equal("levels-x-x", taken[3]);
    }

    private static string Hostile(string name) =>
        "<script>alert('x')</script>\" onmouseover=\"x=cmd|' /C calc'!A0_{sub}^{sup}\u001b[31m\u202e\ud800"
            + $"{new string('W', 300)}{name}";
}
