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

    private static SweepPlan Plan(double wanted, SweepNumbers numbers, bool placementsFixed = false, bool sweepsFixed = false) =>
        SweepPlanner.Of(
        Placed, new PlanQuestion
        {
            HalfWidthDb = wanted,
            Numbers = numbers,
            PlacementsFixed = placementsFixed,
            SweepsFixed = sweepsFixed,
        });
}
