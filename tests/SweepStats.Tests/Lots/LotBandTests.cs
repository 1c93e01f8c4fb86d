using SweepStats.Bands;
using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Lots;

/// <summary>Figures of a band: what they are of, and the one probability for the whole of it.</summary>
public sealed class LotBandTests
{
    private static readonly RehearsalPlan Clear = new()
    {
        Points = 31,
        Lots = 3,
        SpecimensPerLot = 4,
        CoveredSweeps = 3,
        ShieldingStartDb = 30,
        ShieldingStopDb = 45,
        SpecimenDeviationDb = 0.5,
        LotSteps = [new LotStep("B", new Decibels(-2), new FrequencyBand(new Hertz(300e6), new Hertz(1e9)))],
    };

    // The floor hides what lies above some 66 dB: the upper part of the band.
    private static readonly RehearsalPlan Capped = Clear with { ShieldingStopDb = 85 };

    private static readonly NamedBand Upper = new("upper", new FrequencyBand(new Hertz(300e6), new Hertz(1e9)));

    [Theory]
    [InlineData(1, 3, 0.1)]
    [InlineData(0, 2, 0)]
    [InlineData(2, 0, 1)]
    public void IntraclassCorrelationIsTheShareOfTheLots(double lots, double specimens, double share)
    {
        LotBand band = Compared(Clear).Whole;
        Assert.Equal(share,
            (band with
            {
                Scatter = [new(VarianceLevel.Lot, lots), new(VarianceLevel.Specimen, specimens),
                new(VarianceLevel.Sweep, 9)],
            }).IntraclassCorrelation!.Value, 1e-12);
    }

    // B is 2 dB worse over the upper part: A and C stay there; over a band without the step nothing speaks for any.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void ALotThatIsPlainlyWorseIsNotForemost(ulong seed)
    {
        LotComparison lots = Compared(Clear with { Seed = seed }, Upper);
        Assert.Equal(["A", "C"], lots.Bands[1].Foremost.Order(StringComparer.Ordinal));
        double[] means = [.. lots.Bands[1].Foremost.Select(lot => lots.Bands[1].Lots.Single(l => l.Lot == lot).MeanDb)];
        Assert.True(means[0] >= means[1]);
        Assert.Equal(["A", "B", "C"],
            Compared(Clear with { Seed = seed, LotSteps = [] }).Whole.Foremost.Order(StringComparer.Ordinal));
    }

    // Where the floor hides the better lot, the other has the higher mean over what is left: that makes it no better.
    [Fact]
    public void ALotThatTheFloorHidesStays()
    {
        LotStep[] steps = [new("B", new Decibels(-12), Upper.Band),
            new("B", new Decibels(3), new FrequencyBand(new Hertz(30e6), new Hertz(290e6)))];
        LotBand whole = Compared(Capped with { Lots = 2, LotSteps = [.. steps] }).Whole;
        Assert.InRange(whole.ClearShare, 0.2, 0.95);
        Assert.True(whole.Lots[1].MeanDb > whole.Lots[0].MeanDb);
        Assert.Equal(["A", "B"], whole.Foremost.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void WithoutTwoLevelsThatScatterThereIsNoIntraclassCorrelation()
    {
        LotBand band = Compared(Clear).Whole;
        Assert.Null((band with { Scatter = [new(VarianceLevel.Lot, 1), new(VarianceLevel.Sweep, 1)] }).IntraclassCorrelation);
        Assert.Null(
            (band with { Scatter = [new(VarianceLevel.Specimen, 1), new(VarianceLevel.Sweep, 1)] }).IntraclassCorrelation);
        Assert.Null((band with { Scatter = [new(VarianceLevel.Lot, 0), new(VarianceLevel.Specimen, 0)] }).IntraclassCorrelation);
        Assert.Null((band with { Scatter = [] }).IntraclassCorrelation);
        Assert.Null(Compared(Clear with { Lots = 1, LotSteps = [] }).Whole.IntraclassCorrelation);
    }

    [Theory]
    [InlineData(1, 45, 1, 1)]
    [InlineData(2, 45, 1, 1)]
    [InlineData(1, 85, 0.01, 0.99)]
    [InlineData(2, 85, 0.01, 0.99)]
    [InlineData(3, 85, 0.01, 0.99)]
    public void TheProbabilityIsCombinedFromCurvesAndFrequencies(ulong seed, double highest, double clearFrom, double clearTo)
    {
        LotComparison found = Compared(Clear with { Seed = seed, ShieldingStopDb = highest }, Upper);
        foreach (LotBand band in found.Bands)
        {
            Assert.InRange(band.ClearShare, clearFrom - 1e-9, clearTo + 1e-9);
            // Benjamini and Hochberg's least adjusted value by hand: the least of p₍ᵢ₎·n/i.
            double[] single = [.. found.Frequencies.Where(f => band.Band.Contains(f.At) && f.Probability is not null)
                .Select(f => f.Probability!.Value).Order()];
            double least = single.Select((p, i) => p * single.Length / (i + 1)).Min();
            Assert.Equal(CombinedTests.Probability([band.Curves!.Probability, least]), band.Probability!.Value, 1e-12);
        }

        Assert.NotEqual(found.Bands[0].Probability, found.Bands[1].Probability);
    }

    // What goes through the whole band shows in the curves, what is confined to one frequency in that frequency.
    [Fact]
    public void EitherOfTheTwoMayDecide()
    {
        (LotBand through, double least) =
            Whole(Clear with
            {
                LotSteps =
                [new LotStep("B", new Decibels(-2), new FrequencyBand(new Hertz(30e6), new Hertz(1e9)))],
                SpecimenDeviationDb = 0,
                ScatterDb = 3,
            });
        FrequencyGrid grid = Rehearser.Draw(Clear).Grid;
        (LotBand confined, double leastConfined) =
            Whole(Clear with { LotSteps = [new LotStep("B", new Decibels(-6), new FrequencyBand(grid[9], grid[9]))] });
        Assert.True(through.Curves!.Probability < least && through.Probability < 0.05, $"{through.Curves.Probability}, {least}");
        Assert.True(leastConfined < confined.Curves!.Probability && confined.Probability < 0.05,
            $"{confined.Curves.Probability}, {leastConfined}");
    }

    // With the least probability of a single frequency, their number allowed for.
    private static (LotBand Band, double Least) Whole(RehearsalPlan plan)
    {
        LotComparison found = Compared(plan);
        return (found.Whole, FalseDiscovery.Adjusted([.. found.Frequencies.Select(f => f.Probability!.Value)]).Min());
    }

    [Fact]
    public void WhereNoPartIsClearTheFrequenciesSpeakAlone()
    {
        // One specimen of B is hidden everywhere, the others are not.
        AnalysisResult drawn = Hidden(Clear with { Lots = 2, Seed = 4 }, "B04");
        LotBand whole = Compared(drawn).Whole;
        Assert.Equal(0, whole.ClearShare);
        Assert.Null(whole.Curves);
        double[] single = [.. Compared(drawn).Frequencies.Select(f => f.Probability!.Value).Order()];
        Assert.Equal(single.Select((p, i) => p * single.Length / (i + 1)).Min(), whole.Probability!.Value, 1e-12);
        Assert.All(whole.Lots,
            l => Assert.True(double.IsNaN(l.MeanDb) && l.MeanIntervalDb is null && l.ToleranceLimitDb is null));
        Assert.Empty(whole.Pairs);
        Assert.Empty(whole.OverTime);
        Assert.Null(whole.SpecimenStanding);
    }

    [Fact]
    public void FiguresAreOfTheNamedBandAlone()
    {
        AnalysisResult result = Rehearsed.Analysed(Clear);
        LotBand upper = Compared(result, Upper).Bands[1];
        FrequencyGrid grid = result.Campaign.Grid;
        int[] inside = [.. Enumerable.Range(0, grid.Count).Where(f => grid.Hertz[f] >= 300e6)];
        double Mean(int specimen) =>
            LogMean([.. inside.Select(
                f => (grid.Hertz[f], ((ShieldingReading.Measured)result.Curves[specimen].Readings[f]).Shielding.Value.Value))]);
        Assert.Equal("upper", upper.Name);
        Assert.Equal((grid.Hertz[inside[0]], 1e9), (upper.Band.Start.Value, upper.Band.Stop.Value));
        Assert.Equal(Enumerable.Range(0, 12).Select(i => Math.Round(Mean(i), 9)),
            upper.Specimens.Select(p => Math.Round(p.MeanDb, 9)));
        Assert.Equal(Enumerable.Range(4, 4).Average(Mean), upper.Lots[1].MeanDb, 1e-9);
        // B lies 2 dB lower there, and only there.
        Assert.InRange(upper.Lots[1].MeanDb - upper.Lots[0].MeanDb, -4, -1);
    }

    [Fact]
    public void PlainMeansTakeAllReadingsOfTheBandAsTheyCome()
    {
        AnalysisResult result = Rehearsed.Analysed(Capped);
        Campaign drawn = Rehearser.Draw(Capped).Campaign;
        FrequencyGrid grid = result.Campaign.Grid;
        double[] weights = LogWeights.Within(grid, new FrequencyBand(new Hertz(300e6), grid[^1]));
        double Level(Func<Sweep, bool> of) => drawn.Sweeps.Where(of).Average(s => LogWeights.Mean(weights, f => s.Levels[f]));
        foreach (LotSummary lot in Compared(result, Upper).Bands[1].Lots)
        {
            Assert.Equal(Level(s => s.Role == SweepRole.Reference) - Level(s => s.Lot == lot.Lot), lot.PlainMeanDb, 1e-9);
        }
    }

    [Fact]
    public void AFloorThatHidesDoesNotMakeLotsAlike()
    {
        // B shields 8 dB less where the others are hidden.
        LotComparison found = Compared(Capped with { LotSteps = [new LotStep("B", new Decibels(-8), Upper.Band)] });
        LotStretch first = found.Stretches[0];
        Assert.Equal(("B", true), (first.Lot, first.AtLeast));
        Assert.InRange(first.ApartDb, -8.5, -1);
        Assert.True(found.Whole.Probability < 0.05);
    }

    // Trapezoids over the logarithm of the frequency.
    private static double LogMean((double Hertz, double Value)[] points) =>
        points.Zip(points.Skip(1), (a, b) => Math.Log(b.Hertz / a.Hertz) * (a.Value + b.Value) / 2)
            .Sum() / Math.Log(points[^1].Hertz / points[0].Hertz);

    private static AnalysisResult Hidden(RehearsalPlan plan, string specimen)
    {
        Campaign drawn = Rehearser.Draw(plan).Campaign;
        Sweep[] floor = [.. drawn.Sweeps.Where(s => s.Role == SweepRole.Floor)];
        int next = 0;
        Campaign hidden =
            drawn with
            {
                Sweeps =
                [.. drawn.Sweeps.Select(
                    s => s.Specimen == specimen ? Rehearsed.Copy(s, [.. floor[next++].Levels.Select(level => level - 3)]) : s)],
            };
        return Analysis.Run(hidden, new AnalysisPlan { Averaging = plan.Averaging });
    }

    private static LotComparison Compared(RehearsalPlan plan, params NamedBand[] bands) =>
        Compared(Rehearsed.Analysed(plan), bands);

    private static LotComparison Compared(AnalysisResult result, params NamedBand[] bands) =>
        LotComparer.Of(result.Campaign, result.Curves, [.. bands], new LotQuestion());
}
