using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Bands;

public sealed class BandEstimatorTests
{
    [Fact]
    public void TheMeanIsWeightedByLogFrequencyWorkedByHand()
    {
        // 1, 2 and 4 MHz are evenly spaced over log frequency: weights 1/4, 1/2, 1/4. Shielding 10, 20, 40 dB: mean 22.5 dB.
        var grid = new FrequencyGrid([1e6, 2e6, 4e6]);
        Sweep Take(SweepRole role, int i, params double[] levels) =>
            new($"{role}{i}", role, grid, [.. levels], LevelScale.DecibelMilliwatts);
        AnalysisResult result = Analysis.Run(
            new Campaign("t", [Take(SweepRole.Reference, 1, 0.1, 0.1, 0.1), Take(SweepRole.Reference, 2, -0.1, -0.1, -0.1),
                Take(SweepRole.Covered, 1, -10, -20, -40.2), Take(SweepRole.Covered, 2, -10, -20, -39.8)]),
            new AnalysisPlan { DeclaredFloorDb = -300, Averaging = Averaging.Power });
        BandFigure mean = result.Bands[0].MeanDb;
        Assert.Equal(22.5, mean.Value!.Value, 9);
        // Reference sweeps move together by 0.1·√2 (sd), covered mean by 0.25 · 0.2·√2: u² = 0.02/2 + (0.25·0.2828427)²/2 = 0.01
        // + 0.0025 = 0.0125; ν = 0.0125² / (0.01² + 0.0025²) = 1.470588; t(0.975; 1.470588) = 6.188115 (R 4.2.2 qt); half-width
        // 0.691852.
        Assert.Equal(0.691852, mean.High!.Value - mean.Value.Value, 5);
        Assert.Equal(0.691852, mean.Value.Value - mean.Low!.Value, 5);
    }

    [Fact]
    public void TheClaimOverTheBandIsTheLowestOneSidedLimit()
    {
        AnalysisResult result = Rehearsed.Analysed(Rehearsed.Plan);
        BandStatement band = result.Bands[0];
        Assert.Equal(result.Curves[0].Readings.Min(r => r.Evidence.OneSidedLow!.Value), band.AtLeast);
        Assert.Contains(result.Curves[0].Readings,
            r => r.Evidence.At == band.WeakestAt && r.Evidence.OneSidedLow == band.AtLeast);
    }

    [Fact]
    public void TheClaimOverTheBandIsTooHighInAboutFiveOfAHundredCampaignsAtWorst()
    {
        // Worst for the claim is one weak frequency: here 40 dB at the start and 20 dB more at the next point, so that the
        // minimum is decided by one limit.
        int wrong = Enumerable.Range(1, 400).Count(seed => Rehearsed.Analysed(
            Rehearsed.Plan with
            {
                Seed = (ulong)seed,
                Points = 3,
                ShieldingStartDb = 30,
                ShieldingStopDb = 60,
            }).Bands[0].AtLeast!.Value.Value > 30);
        // 20 expected; three binomial standard deviations are 13. Fewer than 7 would show a needless caution.
        Assert.InRange(wrong, 7, 33);
    }

    [Fact]
    public void NotKnowingTheAveragingWidensTheMeanByWhatItMayBe()
    {
        RehearsalPlan plan = Rehearsed.Plan with
        {
            ShieldingStartDb = 67,
            ShieldingStopDb = 67,
            Averaging = Averaging.Log,
            CoveredSweeps = 10,
            Points = 21,
        };
        int held = Draws.Seeds(100).Count(seed =>
        {
            BandFigure mean = Rehearsed.Analysed(plan with { Seed = seed }, new AnalysisPlan()).Bands[0].MeanDb;
            return mean.Low <= 67 && (mean.High is null || 67 <= mean.High);
        });
        Often.AtLeast(held, Draws.Of(100), 0.95, whenFull: 92);
    }

    [Fact]
    public void TheTenthPercentileIsCoveredAlthoughScatterPullsItDown()
    {
        int held = Draws.Seeds(100).Count(seed =>
        {
            BandFigure tenth = Rehearsed.Analysed(Rehearsed.Plan with { Seed = seed, ScatterDb = 1 }).Bands[0].TenthPercentileDb;
            return tenth.Low <= 40 && 40 <= tenth.High;
        });
        Often.AtLeast(held, Draws.Of(100), 0.95, whenFull: 95);
    }

    [Theory]
    [InlineData(67)]
    [InlineData(70)]
    [InlineData(63)]
    public void TheTenthPercentileHoldsInSingleLookNoiseToo(double truth)
    {
        int low = 0, high = 0;
        foreach (ulong seed in Draws.Seeds(100))
        {
            RehearsalPlan plan = Rehearsed.Plan with
            {
                Seed = seed,
                Looks = 1,
                Averaging = Averaging.Sample,
                ShieldingStartDb = truth,
                ShieldingStopDb = truth,
            };
            BandFigure tenth = Rehearsed.Analysed(plan).Bands[0].TenthPercentileDb;
            low += tenth.Low > truth ? 1 : 0;
            high += tenth.High < truth ? 1 : 0;
        }

        Often.AtMost(low, Draws.Of(100), 0.025, whenFull: 7);
        Often.AtMost(high, Draws.Of(100), 0.025, whenFull: 7);
    }

    [Theory]
    [InlineData(40.01, 0)]
    [InlineData(39.99, 1)]
    public void TheShareMeetingIsCoveredWhereTheRequirementIsMissedOrMetByAHair(double wanted, double share)
    {
        var choices = new AnalysisPlan { Averaging = Averaging.Power, Requirement = Requirement.Constant(new Decibels(wanted)) };
        int held = Draws.Seeds(100).Count(seed =>
        {
            BandFigure figure = Rehearsed.Analysed(Rehearsed.Plan with { Seed = seed }, choices).Bands[0].ShareMeeting!.Value;
            return figure.Low <= share && share <= figure.High;
        });
        Often.AtLeast(held, Draws.Of(100), 0.95, whenFull: 91);
    }

    [Fact]
    public void ASharedSweepOffsetIsNotAveragedAwayOverFrequency()
    {
        // One offset of 1 dB a sweep, no other scatter: the mean over 61 frequencies is as uncertain as a single frequency.
        // Without ripple it would be a flat top.
        AnalysisResult result = Rehearsed.Analysed(
            Rehearsed.Plan with { SweepDeviationDb = 1, ScatterDb = 0, ReferenceRippleDb = 3, Looks = 10_000, FloorDbm = -200 });
        BandFigure mean = result.Bands[0].MeanDb;
        double single = ((SweepStats.Shielding.ShieldingReading.Measured)result.Curves[0].Readings[0]).Shielding.High.Value
            - result.Curves[0].Readings.OfType<SweepStats.Shielding.ShieldingReading.Measured>().First().Shielding.Low.Value;
        Assert.InRange((mean.High!.Value - mean.Low!.Value) / single, 0.97, 1.03);
    }

    [Fact]
    public void TheMeanOverTheBandIsCoveredIn95OfAHundredCampaigns()
    {
        int held = Draws.Seeds(300).Count(seed =>
        {
            BandFigure mean =
                Rehearsed.Analysed(Rehearsed.Plan with { Seed = seed, SweepDeviationDb = 0.5, Points = 21 }).Bands[0].MeanDb;
            return mean.Low <= 40 && 40 <= mean.High;
        });
        // Welch's interval with two groups of five covers 95 to 96 %.
        Often.AtLeast(held, Draws.Of(300), 0.95, whenFull: 274);
    }

    [Fact]
    public void ACappedFrequencyMakesTheFiguresBounds()
    {
        BandStatement band = Rehearsed.Analysed(Rehearsed.Plan with { ShieldingStartDb = 40, ShieldingStopDb = 90 }).Bands[0];
        Assert.True(band.CappedCount > 5);
        Assert.Null(band.MeanDb.Value);
        Assert.Null(band.MeanDb.High);
        Assert.InRange(band.MeanDb.Low!.Value, 50, 65);
    }

    [Fact]
    public void TheShareMeetingARequirementIsBracketed()
    {
        BandStatement band = Rehearsed.Analysed(
            Rehearsed.Plan with { ShieldingStartDb = 30, ShieldingStopDb = 50 },
            new AnalysisPlan { Averaging = Averaging.Power, Requirement = Requirement.Constant(new Decibels(40)) }).Bands[0];
        BandFigure share = band.ShareMeeting!.Value;
        Assert.InRange(share.Value!.Value, 0.45, 0.55);
        Assert.True(share.Low <= share.Value && share.Value <= share.High);
        Assert.InRange(share.High!.Value - share.Low!.Value, 0.005, 0.1);
    }

    [Fact]
    public void NineTenthsOfTheBandReachTheTenthPercentile()
    {
        BandFigure tenth =
            Rehearsed.Analysed(Rehearsed.Plan with { ShieldingStartDb = 30, ShieldingStopDb = 50 }).Bands[0].TenthPercentileDb;
        Assert.InRange(tenth.Value!.Value, 31.5, 32.5);
        Assert.True(tenth.Low < tenth.Value && tenth.Value < tenth.High);
    }
}
