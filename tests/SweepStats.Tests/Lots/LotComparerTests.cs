using SweepStats.Lots;
using SweepStats.Rehearsal;
using Xunit;

namespace SweepStats.Tests.Lots;

public sealed class LotComparerTests
{
    private static readonly RehearsalPlan ThreeLots = new()
    {
        Points = 41,
        Lots = 3,
        SpecimensPerLot = 4,
        Placements = 3,
        CoveredSweeps = 2,
        ScatterDb = 0.2,
        SpecimenDeviationDb = 1,
        PlacementDeviationDb = 0.4,
    };

    [Fact]
    public void ScatterByLevelIsWhatWasDrawn()
    {
        LotComparison found = Compared(ThreeLots with { Seed = 2, SpecimensPerLot = 30, Lots = 2 });
        Assert.Equal([VarianceLevel.Lot, VarianceLevel.Specimen, VarianceLevel.Placement, VarianceLevel.Sweep],
            found.Frequencies[5].Scatter.Select(s => s.Level));
        // 60 specimens: a standard deviation is known to 1/√116; placements and sweeps are averaged over frequency.
        double Middle(VarianceLevel level) =>
            Math.Sqrt(found.Frequencies.Average(f => Math.Pow(f.Scatter.Single(s => s.Level == level).DeviationDb, 2)));
        Assert.InRange(Middle(VarianceLevel.Specimen), 0.75, 1.25);
        Assert.InRange(Middle(VarianceLevel.Placement), 0.35, 0.45);
        Assert.InRange(Middle(VarianceLevel.Sweep), 0.19, 0.21);
        Assert.Equal(1, found.Whole.ClearShare, 1e-12);
    }

    [Theory]
    [InlineData(45)]
    [InlineData(74)]
    public void LotsThatAreAlikeAreTakenForDifferentInFivePercent(double shielding)
    {
        int campaigns = Draws.Of(300);
        int band = 0, points = 0, tested = 0;
        for (int seed = 0; seed < campaigns; seed++)
        {
            LotComparison found =
                Compared(ThreeLots with
                {
                    Seed = (ulong)seed + 100,
                    Points = 11,
                    Placements = 0,
                    CoveredSweeps = 3,
                    ShieldingStartDb = shielding - 15,
                    ShieldingStopDb = shielding,
                });
            band += found.Whole.Curves?.Probability < 0.05 ? 1 : 0;
            points += found.Frequencies.Count(f => f.Probability < 0.05);
            tested += found.Frequencies.Count(f => f.Probability is not null);
        }

        Often.AtMost(band, campaigns, 0.05, whenFull: 26);
        // Eleven frequencies of a campaign share the offsets of their specimens: they count as one draw.
        Often.AtMost(points * campaigns / tested, campaigns, 0.05);
        Assert.True(!Draws.Full || points <= tested * 0.075, $"{points} of {tested}");
        Assert.True(tested > campaigns * 4);
    }

    [Fact]
    public void ALotThatIsOffIsFoundAndNotTheSameAsTheOthers()
    {
        int found = 0;
        foreach (ulong seed in Draws.Seeds(20))
        {
            LotComparison compared = Compared(ThreeLots with { Seed = seed, LotDeviationDb = 8 });
            found += compared.Whole.Curves!.Probability < 0.05 ? 1 : 0;
            Assert.Equal(3, compared.Whole.Pairs.Length);
        }

        Often.AtLeast(found, Draws.Of(20), 0.75, whenFull: 15);
    }

    [Fact]
    public void WithoutPlacementsWhatTheyAddBelongsToTheSpecimen()
    {
        LotComparison found = Compared(ThreeLots with { Placements = 0, CoveredSweeps = 3 });
        Assert.Equal([VarianceLevel.Lot, VarianceLevel.Specimen, VarianceLevel.Sweep], found.Whole.Scatter.Select(s => s.Level));
    }

    [Fact]
    public void OneSpecimenALotMakesNoTest()
    {
        LotComparison found = Compared(ThreeLots with { SpecimensPerLot = 1 });
        Assert.Null(found.Whole.Curves);
        Assert.All(found.Whole.Lots, lot => Assert.Null(lot.ToleranceLimitDb));
        Assert.Equal(VarianceLevel.Lot, found.Whole.Scatter[0].Level);
        Assert.Empty(found.Whole.Pairs);
    }

    [Fact]
    public void TheLimitOfALotIsTheFactorTimesItsScatterBelowItsMean()
    {
        LotSummary lot = Compared(ThreeLots).Whole.Lots[0];
        // t(0.975, 3) = 3.182446 and the 95/95 factor of four specimens, 5.144 (ISO 16269-6, from memory).
        double deviation = (lot.BetweenLotsIntervalDb!.Value.High - lot.MeanDb) * 2 / 3.182446;
        Assert.Equal(lot.MeanDb - (5.144 * deviation), lot.BetweenLotsLimitDb!.Value, 0.002 * deviation);
    }

    [Fact]
    public void ThreadsDoNotMatter()
    {
        AnalysisResult result = Rehearsed.Analysed(ThreeLots);
        LotComparison one = LotComparer.Of(result.Campaign, result.Curves, [], new LotQuestion()),
            two = LotComparer.Of(result.Campaign, result.Curves, [], new LotQuestion(), threads: 3);
        Assert.Equal(one.Frequencies.Select(f => (f.Probability, f.Adjusted)),
            two.Frequencies.Select(f => (f.Probability, f.Adjusted)));
        Assert.NotNull(one.Whole.Curves);
        Assert.Equal((one.Whole.Probability, one.Whole.Curves), (two.Whole.Probability, two.Whole.Curves));
        Assert.Equal(one.Whole.Scatter.AsEnumerable(), two.Whole.Scatter);
    }

    private static LotComparison Compared(RehearsalPlan plan)
    {
        AnalysisResult result = Rehearsed.Analysed(plan);
        return LotComparer.Of(result.Campaign, result.Curves, [], new LotQuestion());
    }
}
