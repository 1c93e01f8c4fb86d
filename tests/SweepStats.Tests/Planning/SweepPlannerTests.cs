using SweepStats.Planning;
using Xunit;

namespace SweepStats.Tests.Planning;

public sealed class SweepPlannerTests
{
    private static readonly PlanBasis Placed = PlanBasis.Stated(0.3, 0.8, null, 20);

    [Theory]
    [InlineData(1, false)]
    [InlineData(2, true)]
    public void WhereAllIsFixedNothingIsSearchedFor(double wanted, bool enough)
    {
        SweepPlan plan = Plan(wanted, new SweepNumbers(3, 1, 3), placementsFixed: true, sweepsFixed: true);
        Assert.True(plan.AllFixed);
        Assert.Empty(plan.Fewest);
        Assert.Equal(new SweepNumbers(3, 1, 3), plan.Chosen);
        Assert.Equal(enough, plan.HalfWidthDb <= wanted);
    }

    [Fact]
    public void FixedSweepsLeaveThePlacements()
    {
        SweepPlan plan = Plan(1, new SweepNumbers(3, 2, 6), sweepsFixed: true);
        Assert.Equal(2, Assert.Single(plan.Fewest).Numbers.SweepsEach);
        Assert.Equal(plan.Fewest[0].Numbers, plan.Chosen);
        Assert.True(plan.HalfWidthDb <= 1);
    }

    [Fact]
    public void FixedPlacementsLeaveTheSweeps()
    {
        // What four placements of one sweep miss, more sweeps of each give.
        double wanted = new FewestSweeps(Placed, new(0.95), null).Expect(4, 2).HalfWidthDb;
        SweepPlan plan = Plan(wanted, new SweepNumbers(4, 3, 12), placementsFixed: true);
        Assert.Equal(new SweepNumbers(4, 2, 8), plan.Chosen);
    }

    [Fact]
    public void FixedPlacementsThatAreTooFewStayFixed()
    {
        SweepPlan plan = Plan(1, new SweepNumbers(3, 3, 9), placementsFixed: true);
        Assert.Empty(plan.Fewest);
        Assert.Equal(3, plan.Chosen.Placements);
    }

    /// <summary>Drawing campaigns for a claim takes most of the time: each halving of the range tells how far it is.</summary>
    [Fact]
    public void WhoWaitsForAClaimIsToldHowFarItIs()
    {
        var told = new Told();
        var question = new PlanQuestion { ClaimDb = 30, HalfWidthDb = 1, Numbers = new SweepNumbers(3, 1, 3) };
        PlanBasis ranged = Placed with { RangeDb = 60 };
        SweepPlan plan = SweepPlanner.Of(ranged, question, told);
        Assert.Equal(told.Shares.Order(), told.Shares);
        Assert.All(told.Shares, share => Assert.InRange(share, 0, 1));
        Assert.True(told.Shares.Distinct().Count() > 10, string.Join(' ', told.Shares));
        Assert.InRange(told.Shares[^1], 0.8, 1);
        Assert.Equal(SweepPlanner.Of(ranged, question).Claim!.RangeNeededDb, plan.Claim!.RangeNeededDb);
    }

    private static SweepPlan Plan(double wanted, SweepNumbers numbers, bool placementsFixed = false, bool sweepsFixed = false) =>
        SweepPlanner.Of(
        Placed, new PlanQuestion
        {
            HalfWidthDb = wanted,
            Numbers = numbers,
            PlacementsFixed = placementsFixed,
            SweepsFixed = sweepsFixed,
        });

    private sealed class Told : IProgress<double>
    {
        public List<double> Shares { get; } = [];

        public void Report(double value) => Shares.Add(value);
    }
}
