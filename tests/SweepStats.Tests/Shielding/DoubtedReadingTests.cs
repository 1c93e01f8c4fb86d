using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Doubts;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Shielding;

public sealed class DoubtedReadingTests
{
    private static readonly AlignedCampaign Campaign = Aligner.Align(Rehearser.Draw(Rehearsed.Plan).Campaign, null);
    private static readonly NoiseFloor Floor = NoiseFloorEstimator.Estimate(Campaign.Floor!, Averaging.Power);

    [Theory]
    [InlineData(ReadingDoubts.ReferenceOverloaded, ShieldingState.Overloaded)]
    [InlineData(ReadingDoubts.CoveredAtBottom, ShieldingState.Capped)]
    [InlineData(ReadingDoubts.FloorMoved, ShieldingState.Capped)]
    [InlineData(ReadingDoubts.ReferenceOverloaded | ReadingDoubts.CoveredAtBottom, ShieldingState.Overloaded)]
    public void ADoubtThatMakesTheShieldingTooSmallLeavesTheLowerLimit(ReadingDoubts doubts, ShieldingState state)
    {
        var plain = Assert.IsType<ShieldingReading.Measured>(Curve(ReadingDoubts.None).Readings[5]);
        var bound = Assert.IsType<ShieldingReading.AtLeast>(Curve(doubts).Readings[5]);
        Assert.Equal((state, plain.Shielding.Low.Value), (bound.State, bound.Bound.Value));
        Assert.Equal(plain.Evidence.OneSidedLow, bound.Evidence.OneSidedLow);
    }

    [Theory]
    [InlineData(ReadingDoubts.CoveredOverloaded)]
    [InlineData(ReadingDoubts.CoveredOverloaded | ReadingDoubts.ReferenceOverloaded)]
    public void ACoveredLevelThatIsCutOffLeavesNothing(ReadingDoubts doubts)
    {
        var nothing = Assert.IsType<ShieldingReading.Unreadable>(Curve(doubts).Readings[5]);
        Assert.Equal((ShieldingState.Overloaded, (Decibels?)null), (nothing.State, nothing.Evidence.OneSidedLow));
    }

    [Fact]
    public void ABoundBelowNothingIsNoneWhereTheReferenceIsOverloaded()
    {
        // Reference and covered may both be cut off there, and a negative shielding is then shown too small.
        AlignedCampaign open =
            Aligner.Align(Rehearser.Draw(Rehearsed.Plan with { ShieldingStartDb = 0, ShieldingStopDb = 0 }).Campaign, null);
        ShieldingCurve curve = Curve(open, ReadingDoubts.ReferenceOverloaded);
        Assert.Contains(curve.Readings, r => r is ShieldingReading.Unreadable);
        Assert.All(curve.Readings.OfType<ShieldingReading.AtLeast>(), bound => Assert.True(bound.Bound.Value >= 0));
    }

    [Theory]
    [InlineData(ReadingDoubts.ReferenceOverloaded)]
    [InlineData(ReadingDoubts.FloorMoved)]
    [InlineData(ReadingDoubts.CoveredOverloaded)]
    public void NoLimitFromAboveIsToBeHadOfADoubtedReadingByAnyWay(ReadingDoubts doubts)
    {
        ShieldingCurve curve = Curve(doubts);
        var limits = new OneSidedLimits(curve);
        foreach (double level in new[] { 0.5, 0.8, 0.95, 0.999 })
        {
            Assert.All(Enumerable.Range(0, curve.Readings.Length),
                f => Assert.Equal(double.PositiveInfinity, limits.High(f, level)));
            bool any = doubts != ReadingDoubts.CoveredOverloaded;
            Assert.All(Enumerable.Range(0, curve.Readings.Length), f => Assert.Equal(any, double.IsFinite(limits.Low(f, level))));
        }

        var rule = new DecisionRule(Requirement.Constant(new Decibels(50)), new Confidence(0.95), new Decibels(0));
        BandStatement band = BandEstimator.State(curve, Campaign.Grid, rule, Confidence.NinetyFive);
        Assert.Null(band.MeanDb.High);
        Assert.Null(band.TenthPercentileDb.High);
        Assert.Null(band.TenthPercentileDb.Value);
        // None is shown to fail, though all read 40 dB.
        Assert.Equal(new BandFigure(null, 0, 1), band.ShareMeeting);
    }

    [Fact]
    public void LimitsOfUndoubtedReadingsAreThoseOfTheReading()
    {
        ShieldingCurve curve = Curve(ReadingDoubts.None);
        ImmutableArray<ReadingEstimator> estimators = curve.Levels!.Estimators(Confidence.NinetyFive);
        for (int f = 0; f < curve.Readings.Length; f++)
        {
            var measured = Assert.IsType<ShieldingReading.Measured>(curve.Readings[f]);
            Assert.Equal(new Interval(measured.Shielding.Low.Value, measured.Shielding.High.Value),
                new CurveEnds(curve).At(f, estimators));
        }
    }

    [Theory]
    [InlineData(3)]
    [InlineData(10)]
    [InlineData(30)]
    public void TheBoundHoldsWhateverTheLawByWhichTheReceiverFallsShort(double slope)
    {
        // Levels above −60 dBm are shown with 1/slope of what they rise: reference and covered both fall short, at −30 and −50
        // dBm.
        int over = 0;
        for (ulong seed = 1; seed <= 20; seed++)
        {
            Campaign drawn =
                Rehearser.Draw(Rehearsed.Plan with { Seed = seed, ShieldingStartDb = 20, ShieldingStopDb = 20 }).Campaign;
            AlignedCampaign bent = Aligner.Align(
                Rehearsed.Changed(drawn, (_, _, level) => level > -60 ? -60 + ((level + 60) / slope) : level), null);
            over += Curve(bent, ReadingDoubts.ReferenceOverloaded).Readings
                .Count(r => r is ShieldingReading.AtLeast { Bound.Value: > 20 });
        }

        Assert.Equal(0, over);
    }

    private static ShieldingCurve Curve(ReadingDoubts doubts) => Curve(Campaign, doubts);

    private static ShieldingCurve Curve(AlignedCampaign campaign, ReadingDoubts doubts) =>
        new ShieldingEstimator(campaign, Floor, Confidence.NinetyFive, []).Estimate(
            campaign.Covered[0], new SpecimenDoubts { Readings = [.. Enumerable.Repeat(doubts, campaign.Grid.Count)] });
}
