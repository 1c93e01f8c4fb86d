using System.Collections.Immutable;
using SweepStats.StudyRuns.Coverage;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Coverage;

/// <summary>A seeded part of the coverage study; the whole is run by a script, see the pages under reports/.</summary>
public sealed class IntervalCoverageTests
{
    private static readonly int Campaigns = Draws.Of(40);

    [Theory]
    [InlineData(Averaging.Power, Averaging.Power, 20, 5, 0.5)]
    [InlineData(Averaging.Power, Averaging.Power, 100, 3, 0.0)]
    [InlineData(Averaging.Power, Averaging.Power, 3, 10, 2.0)]
    [InlineData(Averaging.Sample, Averaging.Sample, 1, 3, 0.5)]
    [InlineData(Averaging.Sample, Averaging.Sample, 1, 10, 0.5)]
    [InlineData(Averaging.Log, Averaging.Log, 20, 5, 0.5)]
    [InlineData(Averaging.Log, Averaging.Unknown, 20, 5, 0.5)]
    public void TheIntervalHoldsTheTruthAtEverySignalToNoiseRatio(
        Averaging drawn, Averaging stated, double looks, int sweeps, double scatter)
    {
        ImmutableArray<CoverageRow> rows =
            CoverageStudy.Run(new CoverageCell(drawn, stated, looks, sweeps, scatter), Campaigns, seed: 11);
        foreach ((int from, int to) in new[] { (-20, -11), (-10, -1), (0, 9), (10, 19), (20, 30) })
        {
            (double coverage, int trials) = Pooled(rows, from, to, row => row.Held);
            Assert.True(coverage >= 0.93 - Slack(0.93, trials), $"{from} to {to} dB: {coverage:P2} of {trials}");
            foreach (Func<CoverageRow, int> side in new Func<CoverageRow, int>[] { row => row.ClaimedTooMuch,
                row => row.ClaimedTooLittle })
            {
                (double missed, _) = Pooled(rows, from, to, side);
                Assert.True(missed <= 0.035 + Slack(0.035, trials),
                    $"{from} to {to} dB: {missed:P2} of {trials} miss to one side");
            }
        }
    }

    [Theory]
    [InlineData("rectangle", 0)]
    [InlineData("mismatch", 1)]
    [InlineData("four", 2)]
    public void ErrorsThatNoRepeatShowsAreHeldAsOftenAsScatter(string name, int drawn)
    {
        StatedErrors errors = StatedErrors.All.Single(e => e.Name == name);
        (int, double)[] kinds = [(3, 0.5), (10, 0.5), (5, 2.0)];
        // Day by day each error with one kind of sweeps, so that all kinds are drawn.
        foreach ((int sweeps, double scatter) in Draws.Full ? kinds : [kinds[drawn]])
        {
            ImmutableArray<CoverageRow> rows = CoverageStudy.Run(
                new CoverageCell(Averaging.Power, Averaging.Power, 20, sweeps, scatter) { Errors = errors }, Campaigns, seed: 21);
            foreach ((int from, int to) in new[] { (0, 9), (10, 19), (20, 30) })
            {
                (double coverage, int trials) = Pooled(rows, from, to, row => row.Held);
                double slack = Slack(0.95, trials);
                Assert.True(coverage >= 0.93 - slack && coverage <= 0.975 + slack,
                    $"{name}, {sweeps} sweeps, {from} to {to} dB: {coverage:P2} of {trials}");
            }
        }
    }

    [Theory]
    [InlineData(3, 2)]
    [InlineData(5, 3)]
    public void PlacementsThatDifferAreHeldAsOftenAsSweeps(int placements, int sweeps)
    {
        var cell = new CoverageCell(Averaging.Power, Averaging.Power, 20, sweeps, 0.3)
        {
            Placements = placements,
            PlacementDb = 0.8,
        };
        ImmutableArray<CoverageRow> rows = CoverageStudy.Run(cell, Campaigns, seed: 22);
        foreach ((int from, int to) in new[] { (0, 9), (10, 19), (20, 30) })
        {
            (double coverage, int trials) = Pooled(rows, from, to, row => row.Held);
            double slack = Slack(0.95, trials);
            Assert.True(coverage >= 0.93 - slack && coverage <= 0.975 + slack, $"{from} to {to} dB: {coverage:P2} of {trials}");
        }
    }

    [Fact]
    public void FarAboveTheFloorTheIntervalIsAsWideAsThePlainOne()
    {
        ImmutableArray<CoverageRow> rows =
            CoverageStudy.Run(new CoverageCell(Averaging.Power, Averaging.Power, 20, 5, 0.5), Campaigns, seed: 12);
        Assert.All(rows.Where(r => r.SnrDb >= 20), row => Assert.InRange(row.WidthRatio, 0.99, 1.01));
    }

    [Fact]
    public void APlainIntervalOnRawReadingsMissesTheTruthNearTheFloor()
    {
        ImmutableArray<CoverageRow> rows =
            CoverageStudy.Run(new CoverageCell(Averaging.Power, Averaging.Power, 20, 10, 0.5), Campaigns, seed: 13);
        (double plain, _) = Pooled(rows, -1, 1, row => row.PlainHeld);
        (double ours, int trials) = Pooled(rows, -1, 1, row => row.Held);
        Assert.True(plain < 0.02, $"plain {plain:P1}");
        Assert.True(ours >= 0.93 - Slack(0.93, trials), $"ours {ours:P1}");
    }

    [Fact]
    public void NearlyEverySignalWithinTheStatedRangeIsBoundedFromBothSides()
    {
        ImmutableArray<CoverageRow> rows =
            CoverageStudy.Run(new CoverageCell(Averaging.Power, Averaging.Power, 20, 5, 0.5), Campaigns, seed: 14);
        CoverageRow atLimit = rows.First(r => r.WithinRange > 0.9 * r.Trials);
        double bounded = 1 - ((double)atLimit.Bounds / atLimit.Trials);
        Assert.InRange(bounded, 0.92 - Slack(0.95, atLimit.Trials), 1);
    }

    private static (double Share, int Trials) Pooled(ImmutableArray<CoverageRow> rows, int from, int to,
        Func<CoverageRow, int> count)
    {
        var bin = rows.Where(r => r.SnrDb >= from && r.SnrDb <= to).ToList();
        int trials = bin.Sum(r => r.Trials);
        return ((double)bin.Sum(count) / trials, trials);
    }

    // Three binomial standard deviations; readings of one campaign share their floor and are not quite independent, hence the
    // 1.5.
    private static double Slack(double share, int trials) => 3 * 1.5 * Math.Sqrt(share * (1 - share) / trials);
}
