using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Report;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;
using Xunit;

namespace SweepStats.Acceptance.Report;

/// <summary>The charts of lots and of how their specimens scatter.</summary>
public sealed class LotChartTests
{
    private static readonly Lazy<AnalysisResult> Drawn = new(() => Samples.Run(Samples.Lots, Samples.Power));

    private static AnalysisResult Four => Drawn.Value;

    [Fact]
    public void LotsAndChoiceFollowTheBandsInTheirOrder()
    {
        string[] names = [.. ChartBook.Of(Samples.Run(Samples.Lots, Samples.Choosing)).Select(c => c.Name)];
        string[] expected =
        [
            "lots-over-frequency", "lots", "lot-promise", "scatter", "consistency-h", "consistency-k", "lot-consistency-h",
            "lot-consistency-k", "over-time-lot-mean", "over-time-lot-deviation", "over-time-specimen", "over-time-moving-range",
            "choice", "choice-upper-half-x", "uncertainty-budget",
        ];
        Assert.Equal(expected, names.SkipWhile(n => n != "bands").Skip(1).Take(expected.Length));
    }

    [Fact]
    public void ASingleSpecimenHasItsScatterAndNothingToCompare()
    {
        ChartKind[] kinds = [.. ChartBook.Of(Samples.Run(Samples.Small, Samples.Power)).Select(c => c.Kind)];
        Assert.Contains(ChartKind.Scatter, kinds);
        Assert.DoesNotContain(kinds,
            k => k is ChartKind.Lots or ChartKind.LotsOverFrequency or ChartKind.LotPromise or ChartKind.Consistency
                or ChartKind.OverTime or ChartKind.Choice);
    }

    [Fact]
    public void EveryLotHasItsPromiseInFigures()
    {
        IReadOnlyList<string> labels = new Page(Four).Labels("lots");
        Assert.All(Four.Lots.Whole.Lots,
            l => Assert.Contains(PrintedLevel.Bound(new Decibels(l.ToleranceLimitDb!.Value)), labels));
        Assert.Contains("95 % of its specimens have at least this mean", labels);
        Assert.DoesNotContain(labels, l => l.Contains("cut at the frame", StringComparison.Ordinal));
    }

    [Fact]
    public void ALimitFarOffDoesNotSqueezeTheSpecimens()
    {
        LotBand whole = Four.Lots.Whole;
        LotSummary wild = whole.Lots[0] with { ToleranceLimitDb = -98, MeanIntervalDb = new(-20, 100) };
        LotSummary poor = whole.Lots[1] with { ToleranceLimitDb = 12.34 };
        IReadOnlyList<string> labels =
            new Page(With(Four, whole with { Lots = [wild, poor, .. whole.Lots[2..]] })).Labels("lots");
        Assert.Contains("promises nothing", labels);
        Assert.Contains("promises 12.3 dB, outside the picture", labels);
        Assert.Contains("mean of the lot with 95 % interval (cut at the frame)", labels);
        Assert.DoesNotContain("0", labels);
        Assert.DoesNotContain("100", labels);
    }

    [Fact]
    public void OfManyLotsTheFirstThirtyAreShownAndItIsSaid()
    {
        IReadOnlyList<string> labels =
            new Page(Samples.Run(Samples.Lots with { Lots = 31, SpecimensPerLot = 2, Points = 3 }, Samples.Power)).Labels("lots");
        Assert.Contains(labels, l => l.EndsWith("; the first 30 of 31 lots", StringComparison.Ordinal));
        Assert.Equal(30, labels.Count(l => l.Length is 1 or 3 && char.IsAsciiLetterUpper(l[0])));
    }

    [Fact]
    public void FrequenciesAreMarkedOnlyWhereLotsDiffer()
    {
        const string Legend = "lots differ (5 %, over all frequencies)";
        LotComparison lots = Four.Lots;
        AnalysisResult At(double adjusted) => Four with
        {
            Lots =
            lots with
            {
                Frequencies = [lots.Frequencies[0] with { Adjusted = adjusted },
                .. lots.Frequencies[1..].Select(f => f with { Adjusted = null })],
            },
        };
        double alarm = lots.Question.FalseAlarm;
        Assert.Contains(Legend, new Page(At(alarm)).Labels("lots-over-frequency"));
        Assert.DoesNotContain(Legend, new Page(At(alarm + 1e-4)).Labels("lots-over-frequency"));
        Assert.Contains("They differ at 1 of 31 frequencies.", Description(At(alarm), "lots-over-frequency"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void TheEightLotsThatDeviateMostAreNamed()
    {
        AnalysisResult twelve = Samples.Run(Samples.Lots with { Lots = 12, SpecimensPerLot = 2 }, Samples.Power);
        LotComparison lots = twelve.Lots;
        string[] most =
        [
            .. lots.Lots.Select((name, l) =>
                (name, Size: lots.Frequencies.Average(f => Math.Abs(f.Lots[l].MeanDb - f.Lots.Average(o => o.MeanDb)))))
                .OrderByDescending(l => l.Size).Take(8).Select(l => l.name).Order(StringComparer.Ordinal),
        ];
        IReadOnlyList<string> labels = new Page(twelve).Labels("lots-over-frequency");
        Assert.Equal(most, labels.Where(lots.Lots.Contains));
        Assert.Contains("the other lots", labels);
        Assert.Contains(labels, l => l.EndsWith("the 8 of 12 that deviate most", StringComparison.Ordinal));
    }

    [Fact]
    public void ALotThatIsKnownFromBelowOnlyHasNoLine()
    {
        LotComparison lots = Four.Lots;
        ImmutableArray<LotFrequency> bounded =
            [.. lots.Frequencies.Select(f => f with { Lots = [f.Lots[0] with { Bound = true }, .. f.Lots[1..]] })];
        IReadOnlyList<string> labels =
            new Page(Four with { Lots = lots with { Frequencies = bounded } }).Labels("lots-over-frequency");
        Assert.Contains("A (known from below only)", labels);
        Assert.Contains("B", labels);
        Assert.Contains(labels, l => l.Contains("arrows: there or higher", StringComparison.Ordinal));
        Assert.DoesNotContain(new Page(Four).Labels("lots-over-frequency"), l => l.Contains("arrows", StringComparison.Ordinal));
    }

    [Fact]
    public void ALimitBelowZeroIsNoPromise()
    {
        LotComparison lots = Four.Lots;
        AnalysisResult Promising(double? first, double? others) => Four with
        {
            Plan = Samples.Asking(33),
            Lots = lots with
            {
                Frequencies =
                [.. lots.Frequencies.Select(
                    f => f with { Lots =
                        [.. f.Lots.Select((l, i) => l with { PromisedDb = i == 0 ? first : others,
                            BetweenLotsPromisedDb = i == 0 ? first : others })] })],
            },
        };
        IReadOnlyList<string> labels = new Page(Promising(30, -3)).Labels("lot-promise");
        Assert.Contains("A", labels);
        Assert.DoesNotContain("B", labels);
        Assert.Contains("required: 33 dB", labels);
        Assert.Contains(labels, l => l.EndsWith("; 3 lots without a promise", StringComparison.Ordinal));
        Assert.DoesNotContain(ChartBook.Of(Promising(-1, null)), c => c.Kind == ChartKind.LotPromise);
    }

    [Fact]
    public void WhereTheReferenceWasSweptOnceTheChartsSayWhatIsMissing()
    {
        AnalysisResult once = Samples.Run(Samples.Lots with { ReferenceSweeps = 1 }, Samples.Power);
        IReadOnlyList<string> labels = new Page(once).Labels("lots"), promise = new Page(once).Labels("lot-promise");
        Assert.Contains("mean of the lot with 95 % interval by specimens alone, reference swept once", labels);
        Assert.Contains("95 % of its specimens have at least this mean, by specimens alone, reference swept once", labels);
        Assert.Contains(promise,
            l => l.StartsWith("with 95 % confidence, by specimens alone, reference swept once", StringComparison.Ordinal));
        Assert.DoesNotContain(new Page(Four).Labels("lots"), l => l.Contains("swept once", StringComparison.Ordinal));
    }

    [Fact]
    public void TheScatterHasALineForEachLevelThatCanBeTold()
    {
        IReadOnlyList<string> labels = new Page(Four).Labels("scatter");
        Assert.Equal(["from lot to lot", "from specimen to specimen", "from placement to placement", "from sweep to sweep"],
            labels.Where(l => l.StartsWith("from ", StringComparison.Ordinal)));
        Assert.DoesNotContain(labels, l => l.Contains("gaps", StringComparison.Ordinal));
        LotComparison lots = Four.Lots;
        AnalysisResult gaps = Four with
        {
            Lots =
            lots with { Frequencies = [lots.Frequencies[0] with { Scatter = [] }, .. lots.Frequencies[1..]] },
        };
        Assert.Contains(new Page(gaps).Labels("scatter"),
            l => l.Contains("gaps: some specimen is known from below only", StringComparison.Ordinal));
        AnalysisResult none =
            Four with { Lots = lots with { Frequencies = [.. lots.Frequencies.Select(f => f with { Scatter = [] })] } };
        Assert.DoesNotContain(ChartBook.Of(none), c => c.Kind == ChartKind.Scatter);
    }

    [Fact]
    public void StragglersAndOutliersAreNamed()
    {
        AnalysisResult seventy =
            Samples.Run(Samples.Lots with { Points = 3, Lots = 5, SpecimensPerLot = 14, CoveredSweeps = 1 }, Samples.Power);
        LotBand whole = seventy.Lots.Whole;
        GroupStanding standing = whole.SpecimenStanding!;
        (double straggler, double outlier) = standing.CriticalH;
        double[] h = [.. Enumerable.Range(0, 70)
            .Select(i => i switch { 36 => outlier + 0.1, 45 => -straggler - 0.01, 69 => 0.001, _ => 0.2 })];
        AnalysisResult arranged =
            With(seventy, whole with
            {
                SpecimenStanding =
                standing with
                {
                    Members =
                    [.. standing.Members.Select((m, i) => m with { H = h[i], K = i == 5 ? double.NaN : 1 })],
                },
            });
        IReadOnlyList<string> labels = new Page(arranged).Labels("consistency-h");
        Assert.Contains("The 60 most outlying of 70 specimens", labels);
        Assert.Contains(standing.Members[36].Name, labels);
        Assert.Contains(standing.Members[45].Name, labels);
        Assert.DoesNotContain(standing.Members[69].Name, labels);
        Assert.Contains("straggler: beyond 5 %", labels);
        Assert.Contains("outlier: beyond 1 %", labels);
        Assert.DoesNotContain(new Page(arranged).Labels("consistency-k"), l => l.Contains("beyond", StringComparison.Ordinal));
        string told = Description(arranged, "consistency-h");
        Assert.Contains(standing.Members[36].Name + " at ", told, StringComparison.Ordinal);
        Assert.Equal(1, told.Split("(beyond 1 %)").Length - 1);
    }

    [Fact]
    public void LimitsThatDifferAreTicksAtTheirBars()
    {
        LotBand whole = Four.Lots.Whole;
        GroupStanding standing = whole.SpecimenStanding!;
        Chart Arranged(Func<int, ConsistencyLimits> critical) => ChartBook.Of(With(Four, whole with
        {
            SpecimenStanding = standing with
            {
                Members = [.. standing.Members.Select((m, i) => m with
                {
                    K = i == 5 ? double.NaN : 1.5,
                    CriticalK = i == 5 ? new(double.NaN, double.NaN) : critical(i),
                })],
            },
        })).Single(c => c.Name == "consistency-k");
        double[][] Limits(Chart chart) => [.. chart.Model.Series.OfType<Trace>().Where(t => t.Title is not null)
            .Select(t => t.Points.Where(p => double.IsFinite(p.Y)).Select(p => p.Y).ToArray())];
        Chart equal = Arranged(_ => new(1.6, 2)), unequal = Arranged(i => i == 2 ? new(1.4, 1.45) : new(1.6, 2.25));
        Assert.Equal([[1.6, 1.6], [2, 2]], Limits(equal));
        Assert.Contains("Critical values 1.60 (5 %) and 2.00 (1 %). None lies beyond.", equal.Description,
            StringComparison.Ordinal);
        int members = standing.Members.Length;
        double[][] ticks = Limits(unequal);
        Assert.All(ticks, t => Assert.Equal(2 * (members - 1), t.Length));
        Assert.Equal((1.4, 1.45), (ticks[0][4], ticks[1][4]));
        Assert.Equal((1.6, 2.25), (ticks[0][0], ticks[1][^1]));
        Assert.EndsWith("Critical values 1.40 to 1.60 (5 %) and 1.45 to 2.25 (1 %), by the number of repeats. Beyond: "
            + $"{standing.Members[2].Name} at 1.50 (beyond 1 %).", unequal.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void APointOutsideItsLimitsIsMarkedAndNamed()
    {
        ControlChart pieces = Four.Lots.Whole.OverTime.Single(c => c.Figure == ControlFigure.Specimen);
        ControlPoint last = pieces.Points[^1];
        ControlChart Arranged(double value) => pieces with
        {
            Points =
            [.. pieces.Points[..^1].Select(p => p with { Value = pieces.CentreDb }), last with { Value = value }],
        };
        AnalysisResult Of(double value) => With(Four, Four.Lots.Whole with { OverTime = [Arranged(value)] });
        IReadOnlyList<string> outside = new Page(Of(last.High + 0.01)).Labels("over-time-specimen");
        Assert.Contains("outside the limits", outside);
        Assert.Contains("1 of 16 outside the limits; not every time is noted", outside);
        Assert.Contains("D/D04", outside);
        Assert.Contains("Outside the control limits: D/D04 at", Description(Of(last.High + 0.01), "over-time-specimen"),
            StringComparison.Ordinal);
        Assert.DoesNotContain("outside the limits", new Page(Of(last.High)).Labels("over-time-specimen"));
    }

    [Fact]
    public void TimesAreSaidWhereTheyAreNoted()
    {
        AnalysisResult timed = Samples.Run(
            Samples.Lots with { Points = 3, StartsAt = new DateTimeOffset(2026, 3, 5, 23, 0, 0, TimeSpan.Zero) }, Samples.Power);
        IReadOnlyList<string> labels = new Page(timed).Labels("over-time-lot-mean");
        Assert.Contains("Lots in the order of time", labels);
        Assert.Contains(labels, l => l.Contains("first sweeps 5 March 2026 23:", StringComparison.Ordinal)
            && l.Contains(" to 6 March 2026 00:", StringComparison.Ordinal));
    }

    [Fact]
    public void LabelsThatMatterStayWhereOthersGiveWay()
    {
        string[] names = [.. Enumerable.Range(0, 100).Select(i => $"L/L{i:D2}")];
        LabelledAxis axis = ThinnedLabels.Axis("Specimens", names, i => i is 37 or 99);
        axis.GetTickValues(out IList<double> kept, out _, out _);
        Assert.Contains(37, kept);
        Assert.Contains(99, kept);
        Assert.InRange(kept.Count, 10, 25);
        LabelledAxis few = ThinnedLabels.Axis("Specimens", names[..5], _ => false);
        few.GetTickValues(out IList<double> all, out _, out _);
        Assert.Equal([0, 1, 2, 3, 4], all);
    }

    private static AnalysisResult With(AnalysisResult result, LotBand whole) =>
        result with { Lots = result.Lots with { Bands = [whole, .. result.Lots.Bands[1..]] } };

    private static string Description(AnalysisResult result, string chart) =>
        ChartBook.Of(result).Single(c => c.Name == chart).Description;
}
