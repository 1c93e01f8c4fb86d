using SweepStats.Lots;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.StudyRuns.Lots;
using Xunit;

namespace SweepStats.Tests.Lots;

/// <summary>Intervals and promises of a lot hold what all specimens share.</summary>
public sealed class LotIntervalTests
{
    private static readonly RehearsalPlan Plan = new()
    {
        Points = 9,
        SpecimensPerLot = 4,
        Lots = 2,
        SpecimenDeviationDb = 0.5,
        ReferenceSweeps = 3,
        SweepDeviationDb = 0.5,
    };

    [Fact]
    public void TheIntervalIsTheRootOfTheSquaresOfBothReaches()
    {
        LotBand whole = Compared(Plan).Whole;
        foreach (LotSummary lot in whole.Lots)
        {
            double own = lot.BetweenLotsIntervalDb!.Value.Width / 2;
            Assert.Equal(Math.Sqrt((own * own) + (whole.SharedErrorDb!.Value * whole.SharedErrorDb.Value)),
                lot.MeanIntervalDb!.Value.Width / 2, 1e-3);
            Assert.True(lot.ToleranceLimitDb < lot.BetweenLotsLimitDb);
        }
    }

    // By hand: parts of 3 and 4 that reach t = 4.302653 (two degrees of freedom) and 1.959964 (known) of their errors.
    [Fact]
    public void EachPartReachesByItsOwnQuantile() => Assert.Equal(
        Math.Sqrt(Math.Pow(3 * 4.302653, 2) + Math.Pow(4 * 1.959964, 2)),
        SweepStats.Lots.SharedErrors.Reach(
            [new Contribution(3, 2), new Contribution(4, double.PositiveInfinity), new Contribution(0, 1)], 0.975), 1e-5);

    [Fact]
    public void ARaisedReferenceMovesLotsAndNoInterval()
    {
        LotBand one = Compared(Plan).Whole;
        AnalysisResult raised =
            Rehearsed.Analysed(Plan with { ReferenceDbm = Plan.ReferenceDbm + 10, ShieldingStartDb = 50, ShieldingStopDb = 50 });
        LotBand other = LotComparer.Of(raised.Campaign, raised.Curves, [], new LotQuestion()).Whole;
        Assert.All(one.Lots.Zip(other.Lots),
            pair => Assert.Equal(pair.First.MeanIntervalDb!.Value.Width, pair.Second.MeanIntervalDb!.Value.Width, 0.05));
    }

    [Fact]
    public void OfAReferenceSweptOnceNothingIsSaidBeyondTheComparison()
    {
        LotComparison found = Compared(Plan with { ReferenceSweeps = 1 });
        Assert.Null(found.Whole.SharedErrorDb);
        Assert.All(found.Whole.Lots,
            l => Assert.True(l is
            {
                SharedUnknown: true, MeanIntervalDb: null, ToleranceLimitDb: null,
                BetweenLotsIntervalDb: not null, BetweenLotsLimitDb: not null
            }));
        Assert.All(found.Frequencies.SelectMany(f => f.Lots),
            l => Assert.True(l is { PromisedDb: null, BetweenLotsPromisedDb: not null }));
        Assert.NotNull(found.Whole.Probability);
        Assert.All(Compared(Plan with { SpecimensPerLot = 1, ReferenceSweeps = 1 }).Whole.Lots,
            l => Assert.False(l.SharedUnknown));
    }

    // By specimens alone two references 1 dB apart hold in some 45 to 85 %.
    [Theory]
    [InlineData(4, 0.3)]
    [InlineData(6, 1)]
    public void BesideTwoReferencesThatDifferTheIntervalHoldsAndThePromiseIsKept(int specimens, double specimenDb)
    {
        int campaigns = Draws.Of(300);
        LotIntervalRow row = LotIntervalStudy.Run(new LotIntervalCell(specimens, specimenDb, 2, 1), campaigns, seed: 6_000);
        Assert.Equal(campaigns, row.Mean.Of);
        Often.AtLeast(row.Mean.Count, campaigns, 0.95, whenFull: 279);
        Often.AtMost(row.Broken.Count, row.Broken.Of, 0.05, whenFull: 21);
        Often.AtMost(row.PointBroken.Count, row.PointBroken.Of, 0.05, whenFull: 21);
        Assert.True(row.Alone.Share < 0.88 && row.BrokenAlone.Share > row.Broken.Share, $"{row.Alone}, {row.BrokenAlone}");
    }

    private static LotComparison Compared(RehearsalPlan plan)
    {
        AnalysisResult result = Rehearsed.Analysed(plan);
        return LotComparer.Of(result.Campaign, result.Curves, [], new LotQuestion());
    }
}
