using System.Collections.Immutable;
using SweepStats.StudyRuns.Coverage;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Coverage;

/// <summary>A seeded part of the coverage study where one of several looks is kept.</summary>
public sealed class HeldCoverageTests
{
    private const int Campaigns = 12;

    [Theory]
    [InlineData(Averaging.Peak, 10, 3, 0.5)]
    [InlineData(Averaging.Peak, 100, 5, 0.0)]
    [InlineData(Averaging.Peak, 10, 10, 2.0)]
    [InlineData(Averaging.Peak, 1, 5, 0.5)]
    [InlineData(Averaging.Lowest, 10, 3, 0.5)]
    [InlineData(Averaging.Lowest, 100, 5, 2.0)]
    public void TheIntervalHoldsTheTruthAtEverySignalToNoiseRatio(Averaging kept, double looks, int sweeps, double scatter)
    {
        ImmutableArray<CoverageRow> rows = CoverageStudy.Run(new CoverageCell(kept, kept, looks, sweeps, scatter), Campaigns,
            seed: 31);
        foreach ((int from, int to) in new[] { (-20, -11), (-10, -1), (0, 9), (10, 19), (20, 30) })
        {
            var bin = rows.Where(r => r.SnrDb >= from && r.SnrDb <= to).ToList();
            double trials = bin.Sum(r => r.Trials);
            // Three binomial deviations, 1.5 times as wide since readings of one campaign share their floor.
            double slack = 4.5 * Math.Sqrt(0.025 * 0.975 / trials);
            Assert.True(bin.Sum(r => r.ClaimedTooMuch) / trials <= 0.025 + slack, $"{from} to {to} dB: lower ends over the "
                + "truth");
            Assert.True(bin.Sum(r => r.ClaimedTooLittle) / trials <= 0.025 + slack, $"{from} to {to} dB: upper ends under the "
                + "truth");
        }

        // A signal well over the noise is bounded from both sides, or the interval would hold for want of saying anything.
        Assert.All(rows.Where(r => r.SnrDb >= 20), r => Assert.Equal(0, r.Bounds));
    }

    [Fact]
    public void TakenForAnAverageTheHighestHoldsNearTheFloorInFew()
    {
        ImmutableArray<CoverageRow> rows = CoverageStudy.Run(new CoverageCell(Averaging.Peak, Averaging.Power, 100, 5, 0.5),
            Campaigns, seed: 32);
        var near = rows.Where(r => r.SnrDb is >= 5 and <= 15).ToList();
        Assert.True(near.Sum(r => r.Held) < 0.2 * near.Sum(r => r.Trials));
    }

    [Fact]
    public void TakenForASampleTheLowestClaimsTooMuch()
    {
        ImmutableArray<CoverageRow> rows = CoverageStudy.Run(new CoverageCell(Averaging.Lowest, Averaging.Sample, 100, 5, 0.5),
            Campaigns, seed: 33);
        var near = rows.Where(r => r.SnrDb is >= 0 and <= 10).ToList();
        Assert.True(near.Sum(r => r.ClaimedTooMuch) > 0.8 * near.Sum(r => r.Trials));
    }

    [Fact]
    public void NearlyEverySignalWithinTheStatedRangeIsBoundedFromBothSides()
    {
        ImmutableArray<CoverageRow> rows = CoverageStudy.Run(new CoverageCell(Averaging.Peak, Averaging.Peak, 10, 5, 0.5),
            Campaigns, seed: 34);
        CoverageRow atLimit = rows.First(r => r.WithinRange > 0.9 * r.Trials);
        Assert.InRange(1 - ((double)atLimit.Bounds / atLimit.Trials), 0.9, 1);
    }
}
