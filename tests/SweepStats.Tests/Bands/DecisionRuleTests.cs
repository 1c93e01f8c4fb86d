using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Bands;

public sealed class DecisionRuleTests
{
    private static readonly DecisionRule Rule =
        new(Requirement.Constant(new Decibels(30)), Confidence.NinetyFive, new Decibels(2));

    [Theory]
    [InlineData(32, true)]
    [InlineData(31.999, false)]
    public void ALimitThatReachesRequirementAndGuardBandMeetsThem(double lowerLimitDb, bool met)
    {
        Assert.Equal(met, Rule.IsMet(Bound(40), lowerLimitDb));
        // The bound that is printed has to reach them too.
        Assert.Equal(met, Rule.IsMet(Bound(lowerLimitDb), 40));
    }

    private static ShieldingReading.AtLeast Bound(double db) => new(
        ShieldingState.Capped, new ReadingEvidence
        {
            At = new Hertz(1e8),
            ReferenceDb = -10,
            CoveredDb = -60,
            FloorDb = -61,
            DynamicRange = null,
            StandardUncertaintyDb = null,
            DegreesOfFreedom = null,
            OneSidedLow = new Decibels(db),
            Ambient = false,
            ReferenceInFloor = false,
        }, new Decibels(db));
}
