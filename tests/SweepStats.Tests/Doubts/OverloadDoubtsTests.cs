using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Clipping;
using SweepStats.Doubts;
using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Doubts;

public sealed class OverloadDoubtsTests
{
    // The second specimen reads more than the reference at the second frequency.
    private static readonly AlignedCampaign Campaign = Aligner.Align(
        Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Reference, [-30, -25, -20, -15], [-30.2, -25.2, -20.2, -15.2]),
            Covered("1", -60, -25, -19.9, -40), Covered("2", -31, -24, -25, -15)), null);

    [Fact]
    public void AReferenceAtOrAboveTheLevelFromWhichTheReceiverFallsShortIsOverloaded()
    {
        var overload = new ReferenceOverload(Campaign, Nothing, Curve(-25.1), null);
        Assert.Equal([false, true, true, true], Enumerable.Range(0, 4).Select(overload.OfReference));
        Assert.Equal([true, true, true, true], Enumerable.Range(0, 4)
            .Select(new ReferenceOverload(Campaign, Nothing, Curve(double.NegativeInfinity), null).OfReference));
        Assert.Equal([false, false, false, false],
            Enumerable.Range(0, 4).Select(new ReferenceOverload(Campaign, Nothing, Curve(null), null).OfReference));
        Assert.Equal([false, false, false, false],
            Enumerable.Range(0, 4).Select(new ReferenceOverload(Campaign, Nothing, null, null).OfReference));
    }

    [Fact]
    public void ACoveredLevelAboveTheReferenceFallsShorterThanIt()
    {
        var overload = new ReferenceOverload(Campaign, Nothing, Curve(-25.1), null);
        Assert.Equal([false, true, true, false], overload.OfCovered(Campaign.Covered[0], 0).ToArray());
        Assert.Equal([false, true, false, true], overload.OfCovered(Campaign.Covered[1], 1).ToArray());
    }

    [Fact]
    public void AStatedMaximumInputIsALevelOfMilliwatts()
    {
        Assert.Equal([false, false, true, true],
            Enumerable.Range(0, 4).Select(new ReferenceOverload(Campaign, Nothing, null, -24).OfReference));
        AlignedCampaign ratios = Campaign with { Scale = LevelScale.DecibelRatio };
        Assert.Equal([false, false, false, false],
            Enumerable.Range(0, 4).Select(new ReferenceOverload(ratios, Nothing, null, -24).OfReference));
    }

    [Fact]
    public void EachDoubtStandsAtItsFrequency()
    {
        ImmutableArray<ReadingDoubts> doubts =
            OverloadDoubts.Of(4, f => f < 2, [false, true, false, false], [false, false, true, false]);
        Assert.Equal(
            [ReadingDoubts.ReferenceOverloaded, ReadingDoubts.ReferenceOverloaded | ReadingDoubts.CoveredOverloaded,
                ReadingDoubts.CoveredAtBottom, ReadingDoubts.None], doubts.ToArray());
        Assert.Empty(OverloadDoubts.Of(4, _ => false, [false, false, false, false], []));
    }

    [Fact]
    public void ALevelAboveTheStatedMaximumIsABound()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan with { ReferenceRippleDb = 6 },
            new AnalysisPlan { Averaging = Averaging.Power, MaximumInputDbm = -30 });
        Assert.All(result.Curves[0].Readings,
            r => Assert.Equal(r.Evidence.ReferenceDb > -30, r is ShieldingReading.AtLeast { State: ShieldingState.Overloaded }));
        Assert.Contains(result.Curves[0].Readings, r => r is ShieldingReading.Measured);
        Assert.Contains("at least what is shown", Assert.Single(result.Findings, f => f.Code == "over-input").Message,
            StringComparison.Ordinal);
    }

    private static CampaignClipping Nothing => new(ClippedReadings.None, [ClippedReadings.None, ClippedReadings.None], [[], []]);

    private static LinearityCurve Curve(double? from) =>
        new()
        {
            Steps = [new LinearityStep(0, 10, 1, null, 1, 1, 4)],
            Confidence = Confidence.NinetyFive,
            OverloadedFromDb = from,
        };

    private static IEnumerable<Sweep> Covered(string specimen, params double[] levels) =>
        Rehearsed.Sweeps(SweepRole.Covered, levels)
            .Select(s => new Sweep($"c{specimen}", s.Role, s.Grid, s.Levels, s.Scale) { Specimen = specimen });
}
