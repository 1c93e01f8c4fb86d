using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Shielding;

public sealed class RangeFinderTests
{
    private static readonly RehearsalPlan Plan =
        new() { Points = 201, Placements = 5, CoveredSweeps = 3, ScatterDb = 0.3, ShieldingStartDb = 40, ShieldingStopDb = 78 };

    [Theory]
    [InlineData(0, 0)]
    [InlineData(1, 0)]
    [InlineData(0, 2)]
    [InlineData(2, 0)]
    public void SignalsAtTheEndOfTheRangeAreBoundedInNineteenOfTwentyWherePlacementsDiffer(double whole, double each)
    {
        int end = 0, bounded = 0, campaigns = Draws.Of(40);
        foreach (ulong seed in Draws.Seeds(40))
        {
            RehearsedCampaign drawn =
                Rehearser.Draw(Plan with { Seed = seed, PlacementDeviationDb = whole, PlacementScatterDb = each });
            AnalysisResult result = Analysis.Run(drawn.Campaign, new AnalysisPlan { Averaging = Plan.Averaging });
            for (int f = 0; f < Plan.Points; f++)
            {
                double left = result.Curves[0].Readings[f].Evidence.DynamicRange!.Value.Value - drawn.Truth[0].ShieldingDb[f];
                end += left is >= 0 and < 1 ? 1 : 0;
                bounded += left is >= 0 and < 1 && result.Curves[0].Readings[f] is ShieldingReading.Measured ? 1 : 0;
            }
        }

        // Some five frequencies a campaign, which go together where placements differ as wholes.
        Assert.True(end > 3 * campaigns);
        Assert.InRange(bounded / (double)end, 0.95 - (2 * Math.Sqrt(0.05 * 0.95 / (whole > 0 ? campaigns : end))), 1);
    }

    [Fact]
    public void ASpecimenThatStandsNowhereClearTakesTheScatterOfTheOthers()
    {
        // Both specimens 68 dB down: nothing clear. With one 30 dB up the other has its scatter, and a shorter range.
        RehearsalPlan deep = Plan with
        {
            SpecimensPerLot = 2,
            PlacementScatterDb = 2,
            ShieldingStartDb = 68,
            ShieldingStopDb = 68
        };
        Decibels alone = Range(deep, 0), beside = Range(deep, 30);
        Assert.InRange(alone.Value - beside.Value, 0.5, 10);
    }

    [Fact]
    public void ScatterOfTheReferenceCountsWhereItIsLarger()
    {
        RehearsedCampaign drawn = Rehearser.Draw(Plan with { Placements = 0, CoveredSweeps = 5, ShieldingStopDb = 40 });
        double quiet = Analysed(drawn.Campaign).Curves[0].Readings[0].Evidence.DynamicRange!.Value.Value;
        double loud =
            Analysed(Rehearsed.Changed(drawn.Campaign, (s, f, level) => s.Role == SweepRole.Reference ? level
            + (s.Name.EndsWith("1.csv", StringComparison.Ordinal) ? 3 : 0) : level))
            .Curves[0].Readings[0].Evidence.DynamicRange!.Value.Value;
        Assert.True(loud < quiet, $"{loud} against {quiet}");
    }

    // Where nobody knows how the receiver averages, the range is the shorter of those of either way, to a hundredth: the floor is
    // pooled as for power averages.
    [Theory]
    [InlineData(5)]
    [InlineData(100)]
    public void OfTwoWaysOfAveragingTheOneWithTheShorterRangeCounts(double looks)
    {
        Campaign campaign = Rehearser.Draw(Plan with { Looks = looks }).Campaign;
        double Range(Averaging averaging) => Analysis.Run(campaign, new AnalysisPlan { Averaging = averaging })
            .Curves[0].Readings[100].Evidence.DynamicRange!.Value.Value;
        double power = Range(Averaging.Power), log = Range(Averaging.Log);
        Assert.True(Math.Abs(power - log) > 0.1, $"{power} and {log}");
        Assert.Equal(Math.Min(power, log), Range(Averaging.Unknown), 0.01);
    }

    private static Decibels Range(RehearsalPlan plan, double lift)
    {
        RehearsedCampaign drawn = Rehearser.Draw(plan);
        AnalysisResult result =
            Analysed(Rehearsed.Changed(drawn.Campaign, (s, _, level) => s.Specimen == "A02" ? level + lift : level));
        return result.Curves[0].Readings[100].Evidence.DynamicRange!.Value;
    }

    private static AnalysisResult Analysed(Campaign campaign) =>
        Analysis.Run(campaign, new AnalysisPlan { Averaging = Plan.Averaging });
}
