using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class BestCandidatesScatterTests
{
    // One-sided 5 % points of Student's t: 2.920 with 2 degrees of freedom, 2.132 with 4 (tables, from memory).
    [Theory]
    [InlineData(2.90, true, true)]
    [InlineData(2.94, true, false)]
    [InlineData(2.12, false, true)]
    [InlineData(2.15, false, false)]
    public void OneEstimateOfScatterCountsOnceAndTwoCountTwice(double t, bool common, bool stays)
    {
        CandidateMean lower = new(0, 1, 2, false) { CommonScatter = common };
        Assert.Equal([true, stays], BestCandidates.Among([lower with { Value = t * Math.Sqrt(2) }, lower], 0.05));
    }
}
