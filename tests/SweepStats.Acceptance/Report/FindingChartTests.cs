using System.Globalization;
using System.Xml.Linq;
using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Repeats;
using SweepStats.Report;
using SweepStats.Report.Answer;
using SweepStats.Report.Drawing;
using SweepStats.Report.Findings;
using SweepStats.Report.Text;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>The charts behind the findings: offsets, residuals, compression.</summary>
public sealed class FindingChartTests
{
    private static readonly Lazy<AnalysisResult> Odd = new(() => Samples.Run(Samples.Odd, Samples.Power));

    [Fact]
    public void AnOddSweepIsNamedInTheOffsetsAndMarkedInItsGroup()
    {
        Page page = new(Odd.Value);
        Assert.Contains("reference-03", page.Labels("offsets"));
        Assert.Contains("odd sweep", page.Labels("offsets"));
        Assert.Contains("reference-03 (odd)", page.Labels("residuals-reference"));
        Assert.Contains("covered-02 (odd)", page.Labels("residuals-a-a01"));
        Assert.Contains("Ringed as odd: reference-03, covered-02.", Description(page, "offsets"), StringComparison.Ordinal);
    }

    [Fact]
    public void ACleanCampaignHasItsOffsetsAndNothingElse()
    {
        Page page = new(Samples.Run(Samples.Small with { Points = 101 }, Samples.Power) with { Findings = [] });
        Assert.DoesNotContain("odd sweep", page.Labels("offsets"));
        Assert.DoesNotContain(page.Labels("offsets"), l => l.StartsWith("drift", StringComparison.Ordinal));
        Assert.DoesNotContain(page.Charts, f =>
            f.Path.Contains("residuals", StringComparison.Ordinal) || f.Path.Contains("linearity", StringComparison.Ordinal));
    }

    [Fact]
    public void ADriftLineIsDrawnOnlyWhereADriftWasFound()
    {
        AnalysisResult drifting = Samples.Run(Samples.Drifting, Samples.Power);
        Finding drift = Assert.Single(drifting.Findings, f => f.Code == "drift");
        string legend = $"drift found, {PrintedLevel.Ratio(drift.Size!.Value.Value)} in all";
        Assert.Contains(legend, new Page(drifting).Labels("offsets"));
        Assert.DoesNotContain(legend, new Page(drifting with { Findings = [] }).Labels("offsets"));
        Assert.Equal("Time, 12 May 2026 (UTC+02:00)",
            Assert.Single(new Page(drifting).Labels("offsets"), l => l.StartsWith("Time", StringComparison.Ordinal)));
    }

    [Fact]
    public void ADriftFoundInTheReferenceAloneIsDrawnThroughIt()
    {
        AnalysisResult drifting = Samples.Run(Samples.Drifting, Samples.Power);
        AnalysisResult shifted = drifting with
        {
            Findings =
            [.. drifting.Findings.Where(f => f.Code == "drift").Select(f => f with { Role = SweepRole.Reference })],
        };
        Assert.Contains(new Page(shifted).Labels("offsets"), l => l.StartsWith("drift found", StringComparison.Ordinal));
    }

    [Fact]
    public void SweepsStandInOrderWhereASignalSweepHasNoTimeOrTwoShareOne()
    {
        Campaign timed = Rehearser.Draw(Samples.Drifting).Campaign;
        string[] axes =
        [
            .. new Func<Sweep, DateTimeOffset?>[]
            {
                s => s.TakenAt,
                s => s.Role == SweepRole.Floor ? null : s.TakenAt,
                s => s.Name.EndsWith("covered-02.csv", StringComparison.Ordinal) ? null : s.TakenAt,
                s => s.TakenAt!.Value.Date,
            }.Select(time => Retimed(timed, time)).Select(
                c => new Page(Analysis.Run(c, Samples.Power)).Labels("offsets")
                    .Single(l =>
                        l.StartsWith("Time", StringComparison.Ordinal) || l.StartsWith("Sweeps in", StringComparison.Ordinal))),
        ];
        Assert.Equal(["Time, 12 May 2026 (UTC+02:00)", "Time, 12 May 2026 (UTC+02:00)", "Sweeps in order, 4 groups side by side",
            "Sweeps in order, 4 groups side by side"], axes);
    }

    [Fact]
    public void ACellShowsTheValueFarthestFromZeroAndColumnsCoverTheAxis()
    {
        AnalysisResult result = Samples.Run(Samples.Odd with { Points = 1601 }, Samples.Power);
        foreach (RepeatGroup group in result.Repeats)
        {
            List<HeatColumn> columns = HeatColumn.Of(result.Campaign.Grid, group);
            Assert.InRange(columns.Count, 100, HeatColumn.Most);
            Assert.Equal(result.Campaign.Grid[0].Value, columns[0].FromHz);
            Assert.Equal(result.Campaign.Grid[^1].Value, columns[^1].ToHz);
            Assert.All(columns.Zip(columns.Skip(1)), pair => Assert.Equal(pair.First.ToHz, pair.Second.FromHz));
            Assert.Equal(Enumerable.Range(0, group.Points.Length), columns.SelectMany(c => c.Points));
            foreach (RepeatedSweep sweep in group.Sweeps)
            {
                double[] shown = [.. columns.Select(c => c.Farthest([sweep])).OfType<double>()];
                Assert.Equal(sweep.RestDb.Max(), shown.Max());
                Assert.Equal(sweep.RestDb.Min(), shown.Min());
            }
        }
    }

    [Fact]
    public void APointThatWasNotComparedIsSeenBesideThoseThatWere()
    {
        AnalysisResult result = Samples.Run(Samples.Odd with { Points = 1601 }, Samples.Power);
        FrequencyGrid grid = result.Campaign.Grid;
        RepeatGroup floor = result.Repeats.Single(g => g.Role == SweepRole.Floor);
        double carrier = grid[Enumerable.Range(0, grid.Count).Except(floor.Points).Single()].Value;
        HeatColumn hatched = HeatColumn.Of(grid, floor).Single(c => c.Points.Count == 0);
        Assert.InRange(carrier, hatched.FromHz / 1.03, hatched.ToHz * 1.03);
        double division = Math.Log(grid[^1].Value / grid[0].Value) / 140;
        Assert.InRange(Math.Log(hatched.ToHz / hatched.FromHz), division / 4, division);

        RepeatGroup comb = floor with { Points = [.. floor.Points.Where(p => p % 2 == 0)] };
        List<HeatColumn> columns = HeatColumn.Of(grid, comb);
        Assert.InRange(columns.Count, 50, HeatColumn.Most);
        Assert.Equal(Enumerable.Range(0, comb.Points.Length), columns.SelectMany(c => c.Points));
    }

    [Fact]
    public void ASpikeHasTheDarkestColourAndLeavesTheRestReadable()
    {
        double[] small = [.. Enumerable.Range(0, 300).Select(i => (i % 21) / 25.0 - 0.4)];
        var scale = new HeatScale(small.Append(25));
        Assert.Equal(0.5, scale.LimitDb);
        Assert.True(scale.IsExceeded);
        Assert.Equal(HeatScale.Shades, scale.Shade(25));
        Assert.Equal(-8, scale.Shade(-0.4));
        Assert.Equal(0, scale.Shade(0));
        Assert.False(new HeatScale(small).IsExceeded);
    }

    [Fact]
    public void WhatWasNotComparedIsHatchedAndTheKeySaysWhy()
    {
        Page page = new(
            Samples.Run(Samples.Odd with
            {
                OddSweeps =
                [.. Samples.Odd.OddSweeps, new Rehearsal.OddSweep(SweepRole.Floor, 2, OffsetDb: 3)],
            }, Samples.Power));
        Assert.Contains("not compared: something transmits there", page.Labels("residuals-floor"));
        Assert.Contains("not compared: within 10 dB of the floor, or something transmits", page.Labels("residuals-a-a01"));
        Page quiet = new(Samples.Run(Samples.Odd with { Ambient = [], ShieldingStopDb = 30 }, Samples.Power));
        Assert.DoesNotContain(quiet.Labels("residuals-a-a01"), l => l.StartsWith("not compared", StringComparison.Ordinal));
    }

    [Fact]
    public void HeatMapsAreRectanglesAndAtMostSix()
    {
        Finding named = Odd.Value.Findings.First(f => f.Code == "odd-sweep");
        AnalysisResult many = Samples.Run(Samples.HundredGroups, Samples.Power);
        many = many with { Findings = [named with { Role = null, Specimen = null, Sweep = null }] };
        string[] maps =
            [.. new Page(many).Charts.Select(f => f.Path).Where(p => p.Contains("residuals", StringComparison.Ordinal))];
        Assert.Equal(6, maps.Length);
        Assert.DoesNotContain(maps, m => m.Contains("floor", StringComparison.Ordinal));
        XElement svg = new Page(Odd.Value).Chart("residuals-reference").Root!;
        Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName == "image");
        Assert.InRange(svg.Descendants().Count(e => e.Name.LocalName == "rect"), 100, 8 * HeatColumn.Most);
        Assert.InRange(svg.ToString().Length, 1000, 300_000);
    }

    [Fact]
    public void TheGravestFindingComesFirst()
    {
        Finding odd = Odd.Value.Findings.First(f => f.Code == "odd-sweep" && f.Role == SweepRole.Reference);
        Finding plateau = odd with
        {
            Code = "saturation-plateau",
            Severity = Severity.Fault,
            Role = SweepRole.Covered,
            Specimen = new SpecimenName("A", "A01"),
            Sweep = null,
        };
        AnalysisResult both = Odd.Value with { Findings = [odd, plateau] };
        Assert.Equal([SweepRole.Covered, SweepRole.Reference], ResidualGroups.Of(both).Select(g => g.Group.Role));
    }

    [Fact]
    public void WhatConcernsALotShowsItsSpecimensAlone()
    {
        Finding drift = Odd.Value.Findings.First(f => f.Code == "odd-sweep") with
        {
            Code = "drift",
            Role = null,
            Specimen = null,
            Sweep = null,
            Lot = "B",
        };
        AnalysisResult many = Samples.Run(Samples.HundredGroups, Samples.Power) with { Findings = [drift] };
        Assert.All(ResidualGroups.Of(many), g => Assert.Equal("B", g.Group.Specimen?.Lot));
        Assert.NotEmpty(ResidualGroups.Of(many));
        Assert.Contains(RuleWords.Tally(many), line => line.Contains("drift (1 lot)", StringComparison.Ordinal));
    }

    [Fact]
    public void TheCompressionPointIsMarkedWhereOverloadWasFound()
    {
        AnalysisResult result = Samples.Run(Samples.Overloaded, Samples.Power);
        string at = string.Create(CultureInfo.InvariantCulture, $"{Math.Round(result.Linearity!.CompressionDbm!.Value, 1)} dBm");
        // 1 dB short at −31 dBm of input: 40 dB are lost on the way, so at 9 dBm of the source; a chord of the bent curve passes
        // 1 dB a little earlier.
        Assert.InRange(result.Linearity.CompressionDbm.Value, 7.5, 9.5);
        Assert.Contains($"falls 1 dB short at about {at}", new Page(result).Labels("linearity"));
        Page untold = new(result with { Findings = [] });
        Assert.DoesNotContain(untold.Labels("linearity"), l => l.StartsWith("falls", StringComparison.Ordinal));
        Assert.Contains("shown too little, with 95 % interval", untold.Labels("linearity"));
    }

    [Fact]
    public void SingleLinearitySweepsHaveNoIntervalAndSaySo()
    {
        IReadOnlyList<string> labels =
            new Page(Samples.Run(Samples.Overloaded with { LinearitySweeps = 1 }, Samples.Power)).Labels("linearity");
        Assert.Contains("single sweeps: no interval", labels);
        Assert.DoesNotContain(labels, l => l.Contains("95 %", StringComparison.Ordinal));
    }

    [Fact]
    public void EveryFindingThatAChartShowsLeadsToIt()
    {
        Page page = new(Odd.Value);
        XElement odd = page.Tree.Descendants("li").First(li => li.Descendants("code").Any(c => c.Value == "odd-sweep"));
        Assert.Equal(["#chart-offsets", "#chart-residuals-a-a01", "#chart-residuals-reference"],
            odd.Descendants("a").Select(a => a.Attribute("href")!.Value).Order());
        Assert.All(odd.Descendants("a"), a =>
            Assert.Contains(page.Tree.Descendants("figure"), f => "#" + f.Attribute("id")?.Value == a.Attribute("href")!.Value));
    }

    [Fact]
    public void ShortNamesKeepTheirNumbers()
    {
        static string Short(string name) =>
            SweepNames.Short(new Sweep(name, SweepRole.Floor, new FrequencyGrid([1]), [0], LevelScale.DecibelMilliwatts));
        Assert.Equal("covered-03", Short("covered/A/A01/covered-03.csv"));
        Assert.Equal("a very…run_17 of 9", Short("x/a very long name of one run_17 of 9"));
        Assert.Equal("v1.25 dB", Short("v1.25 dB"));
    }

    [Fact]
    public void TheChartsComeAsPngToo()
    {
        ReportFile[] files;
        try
        {
            files = [.. ReportBuilder.Build(Odd.Value, new ReportOptions { Png = true })];
        }
        catch (PngUnavailableException)
        {
            return; // A machine without fonts, as PageStructureTests has it.
        }

        foreach (string name in new[] { "offsets", "residuals-reference", "residuals-a-a01" })
        {
            byte[] png = [.. files.Single(f => f.Path == $"charts/{name}.png").Content];
            Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], png[..4]);
            Assert.True(png.Length > 10_000);
        }
    }

    private static Campaign Retimed(Campaign campaign, Func<Sweep, DateTimeOffset?> time) => campaign with
    {
        Sweeps =
        [
            .. campaign.Sweeps.Select(s => new Sweep(s.Name, s.Role, s.Grid, s.Levels, s.Scale)
            {
                Lot = s.Lot, Specimen = s.Specimen, Placement = s.Placement, SourceDbm = s.SourceDbm, Settings = s.Settings,
                TakenAt = time(s),
            }),
        ],
    };

    private static string Description(Page page, string chart) =>
        page.Chart(chart).Root!.Elements().Single(e => e.Name.LocalName == "desc").Value;
}
