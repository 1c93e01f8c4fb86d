using System.Collections.Immutable;
using SweepStats.Rehearsal;
using SweepStats.Repeats;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Repeats;

public sealed class DriftTestTests
{
    [Fact]
    public void TheLineOfAGroupHasTheCommonSlopeAndTheGroupsOwnMean()
    {
        foreach (DateTimeOffset? start in new DateTimeOffset?[] { null, new(2026, 5, 12, 9, 0, 0, TimeSpan.Zero) })
        {
            foreach (DriftTest test in Rehearsed.Analysed(Rehearsed.Plan with { DriftDb = 2, StartsAt = start }).Drifts)
            {
                Assert.Equal(start is not null, test.Along == DriftAlong.Clock);
                for (int g = 0; g < test.Groups.Length; g++)
                {
                    double[] line = [.. test.Line(g)];
                    Assert.Equal(Sample.Mean(test.Groups[g].Offsets()), Sample.Mean(line), 9);
                    Assert.Equal(test.Size * (test.X[g][^1] - test.X[g][0]) / test.Span, line[^1] - line[0], 9);
                }
            }
        }
    }

    [Fact]
    public void TheClearestOfSistersPaysForAllOfThem()
    {
        // By order three curves are tried (steady, warm-up, halves), by the clock two; a drift of 1 dB keeps the products below
        // 1.
        RehearsalPlan moving = Rehearsed.Plan with { DriftDb = 1, SweepDeviationDb = 0.1 };
        ImmutableArray<DriftTest> byOrder = Rehearsed.Analysed(moving).Drifts;
        Assert.Contains(byOrder, t => t.Probability < 1);
        Assert.All(byOrder, t => Assert.Equal(Math.Min(1, 3 * t.Slope.Probability), t.Probability, 1e-15));
        DriftTest clock = Assert.Single(Rehearsed.Analysed(moving with { StartsAt = DateTimeOffset.UnixEpoch }).Drifts);
        Assert.Equal(Math.Min(1, 2 * clock.Slope.Probability), clock.Probability, 1e-15);
    }
}
