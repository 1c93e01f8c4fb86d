using SweepStats.Floor;
using SweepStats.Planning;
using SweepStats.Statistics;
using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Planning;

public sealed class ClaimForecastTests
{
    private const double ClaimDb = 40;

    // Three binomial deviations of a share counted over the drawn campaigns.
    private static double Slack(double share) => 3 * Math.Sqrt(share * (1 - share) / DrawnReadings.MostCampaigns);

    [Theory]
    [InlineData(5, 2, 3)]
    [InlineData(3, 0.5, 1)]
    [InlineData(10, 1, 0.5)]
    public void FarOverTheFloorTheClaimHasThePowerOfStudentsTest(int placements, double spread, double margin)
    {
        // Without scatter of the reference the limit is mean − t·s/√n: it reaches the claim as often as a noncentral t exceeds
        // Student's 95 % point.
        PlanBasis basis = PlanBasis.Stated(0, spread, null, 20);
        double dof = placements - 1;
        double power = 1 - NoncentralT.Cdf(StudentT.Quantile(0.95, dof), dof, margin * Math.Sqrt(placements) / spread);
        var claim = new ClaimForecast(new ResultForecast(basis, new SweepNumbers(placements, 1, 5), Confidence.NinetyFive),
            ClaimDb, ClaimDb + margin);
        Assert.Equal(power, claim.ShareWithPlenty, Slack(power));
    }

    [Theory]
    [InlineData(0.8)]
    [InlineData(0.99)]
    public void ClaimsAreMadeAtTheirOwnLevel(double level)
    {
        PlanBasis basis = PlanBasis.Stated(0, 1, null, 20);
        double power = 1 - NoncentralT.Cdf(StudentT.Quantile(level, 4), 4, 2 * Math.Sqrt(5));
        var forecast = new ResultForecast(basis, new SweepNumbers(5, 1, 5), Confidence.NinetyFive, new Confidence(level));
        Assert.Equal(power, new ClaimForecast(forecast, ClaimDb, ClaimDb + 2).ShareWithPlenty, Slack(power));
        // The interval keeps its own.
        Assert.Equal(new ResultForecast(basis, new SweepNumbers(5, 1, 5), Confidence.NinetyFive).At(40, 90).MedianLowDb,
            forecast.At(40, 90).MedianLowDb);
    }

    [Fact]
    public void SimpleAcceptanceGoesByTheEstimate()
    {
        // The mean of five placements is at or above a claim half a dB lower in Φ(0.5·√5) = Φ(1.118) = 86.8 %.
        PlanBasis basis = PlanBasis.Stated(0, 1, null, 20);
        var forecast = new ResultForecast(basis, new SweepNumbers(5, 1, 5), Confidence.NinetyFive, new Confidence(0.5));
        Assert.Equal(0.868, new ClaimForecast(forecast, ClaimDb, ClaimDb + 0.5).ShareWithPlenty, Slack(0.868));
    }

    [Fact]
    public void AStatedErrorMovesWholeCampaigns()
    {
        // With next to no scatter the limit is SE + error − 1.645·0.5 dB: it reaches a claim 1 dB lower where the error is above
        // −0.178 dB, in Φ(0.355) = 63.9 %.
        var error = new SystematicError(
            [new UncertaintyEntry { Name = "stated", HalfWidthDb = 1, Distribution = ErrorDistribution.Normal }]);
        PlanBasis basis = PlanBasis.Stated(0.001, 0, null, 1000) with { TypeB = error };
        var claim = new ClaimForecast(new ResultForecast(basis, new SweepNumbers(20, 1, 20), Confidence.NinetyFive),
            ClaimDb, ClaimDb + 1);
        Assert.Equal(0.639, claim.ShareWithPlenty, Slack(0.639));
    }

    [Fact]
    public void NothingIsClaimedOfASpecimenThatShieldsNoMoreThanTheClaim()
    {
        var claim = new ClaimForecast(Forecast(new SweepNumbers(5, 3, 15)), ClaimDb, ClaimDb);
        Assert.Equal(0.05, claim.ShareWithPlenty, Slack(0.05));
        Assert.Null(claim.RangeNeededDb(0.9));
    }

    [Fact]
    public void TheRangeNeededIsTheLeastThatIsEnough()
    {
        var claim = new ClaimForecast(Forecast(new SweepNumbers(5, 3, 15)), ClaimDb, ClaimDb + 3);
        double range = claim.RangeNeededDb(0.9)!.Value;
        Assert.True(claim.Share(range) >= 0.9);
        Assert.True(claim.Share(range - 0.5) < 0.9);
        Assert.Equal(range, claim.RangeNeededDb(0.9)!.Value);
    }

    [Fact]
    public void AClaimThatAlwaysHoldsMayBeAskedToHoldAlways()
    {
        var claim = new ClaimForecast(Forecast(new SweepNumbers(5, 3, 15)), ClaimDb, ClaimDb + 30);
        Assert.Equal(1, claim.ShareWithPlenty);
        Assert.InRange(claim.RangeNeededDb(1)!.Value, claim.RangeNeededDb(0.95)!.Value, ClaimDb + 30);
    }

    [Fact]
    public void MoreSweepsOrMoreLooksNeedLessRange()
    {
        double few = Needed(20, new SweepNumbers(4, 1, 4));
        Assert.True(Needed(20, new SweepNumbers(4, 10, 40)) < few - 1);
        Assert.True(Needed(200, new SweepNumbers(4, 1, 4)) < few - 1);
    }

    [Fact]
    public void UsableRangeIsThatOfTheDetectionLimit()
    {
        // 60 dB of displayed range at 20 looks: the noise power lies 10/ln 10 · (ln 20 − ψ(20)) = 0.1095 dB over its log mean.
        var numbers = new SweepNumbers(5, 3, 15);
        PlanBasis basis = PlanBasis.Stated(0.3, 0.5, null, 20);
        // Placements scatter by √(0.5² + 0.3²/3) = 0.529 dB, the reference by 0.3 dB: the covered repeats are what has to be
        // bounded.
        double weakest = new DetectionLimit(basis.Noise[0], Confidence.NinetyFive)
            .SignalToNoise(15, 5, Math.Sqrt(0.28), basis.FloorError);
        Assert.Equal(60 - 0.1095 - weakest, new ResultForecast(basis, numbers, Confidence.NinetyFive).UsableRangeDb(60), 1e-3);
    }

    [Fact]
    public void InTheNoiseOnlyABoundIsExpected()
    {
        ExpectedResult deep = Forecast(new SweepNumbers(5, 3, 15)).At(75, 60);
        Assert.Equal(double.PositiveInfinity, deep.MedianHighDb);
        Assert.InRange(deep.BoundedShare, 0, 0.1);
        ExpectedResult clear = Forecast(new SweepNumbers(5, 3, 15)).At(30, 60);
        Assert.InRange(30, clear.MedianLowDb, clear.MedianHighDb);
        Assert.Equal(1, clear.BoundedShare);
    }

    private static double Needed(double looks, SweepNumbers numbers) =>
        new ClaimForecast(new ResultForecast(PlanBasis.Stated(0.1, 0.1, null, looks), numbers, Confidence.NinetyFive), ClaimDb,
            ClaimDb + 3).RangeNeededDb(0.9)!.Value;

    private static ResultForecast Forecast(SweepNumbers numbers) =>
        new(PlanBasis.Stated(0.3, 0.5, null, 20), numbers, Confidence.NinetyFive);
}
