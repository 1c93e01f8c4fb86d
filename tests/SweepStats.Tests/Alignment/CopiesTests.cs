using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Alignment;

public sealed class CopiesTests
{
    [Theory]
    [InlineData(4001, 0.01)]
    [InlineData(201, 0.01)]
    [InlineData(201, 0.1)]
    [InlineData(1001, 0.5)]
    [InlineData(201, 0)]
    public void EveryFileCopiedFiveTimesLeavesOneOfEachRole(int points, double step)
    {
        Campaign drawn = Rehearser.Draw(Once(points, step)).Campaign;
        AlignedCampaign aligned =
            Aligner.Align(drawn with
            {
                Sweeps =
                [.. Enumerable.Range(0, 5).SelectMany(_ => drawn.Sweeps.Select(s => Rehearsed.Copy(s, s.Levels)))],
            }, null);
        Assert.Equal([1, 1, 1], [aligned.Floor!.SweepCount, aligned.Reference.SweepCount, aligned.Covered[0].Block.SweepCount]);
        Assert.Equal(12, aligned.Duplicates.Length);
        Assert.All(aligned.Duplicates, twin => Assert.True(twin.SameKind));
    }

    [Fact]
    public void AsManyChangesAsTheSteadiestReceiverNeedsAreAskedFor()
    {
        // Steps of 0.1 dB, 0.01 dB of scatter: two readings agree with chance 0.887 (fixtures/oracles/steps.csv), and 0.887^C
        // < 0.001 from C = 58 on.
        Assert.Single(Copies.Among(Twice(Staircase(59))));
        Assert.Empty(Copies.Among(Twice(Staircase(58))));
        // Three times the same: 0.887^(2C), 29 changes are enough.
        Assert.Equal(2, Copies.Among(Of(Staircase(30), Staircase(30), Staircase(30))).Length);
    }

    [Fact]
    public void WhatOtherSweepsShowOfTheScatterCountsMore()
    {
        // One third of the points over, one third under the median of the differences: 2·20/(59 + 2) of the changes.
        double[] other = [.. Staircase(60).Select((l, f) => l + (0.1 * ((f % 3) - 1)))];
        Assert.Single(Copies.Among(Of(Staircase(60), Staircase(60), other)));
        // Sweeps that differ at one point in sixty on the way up and one on the way down agree everywhere often enough.
        double[] near = [.. Staircase(60).Select((l, f) => l + (f == 10 ? 0.1 : f == 50 ? -0.1 : 0))];
        Assert.Empty(Copies.Among(Of(Staircase(60), Staircase(60), near)));
    }

    [Fact]
    public void AnOffsetThatASweepSharesSaysNothingOfTheScatterFromPointToPoint()
    {
        double[] moved = [.. Staircase(60).Select(l => l + 0.3)];
        Assert.Empty(Copies.Among(Of(Staircase(60), Staircase(60), moved)));
    }

    [Fact]
    public void AFewTypedLevelsAreNoCopies()
    {
        Assert.Empty(Copies.Among(Twice([-30, -31, -29, -30, -33])));
        Assert.Empty(Copies.Among(Twice([-30.1, -31.4, -29.9, -30.2, -33.3])));
        Assert.False(Copies.CouldBeTold(Twice([-30.1, -31.4, -29.9, -30.2, -33.3])));
    }

    [Fact]
    public void SweepsOfTwoKindsAreToldByManyDifferentLevels()
    {
        double[] levels = [.. Enumerable.Range(0, 10).Select(i => -40.0 - i)];
        ImmutableArray<Sweep> two =
            [.. Rehearsed.Sweeps(SweepRole.Reference, levels), .. Rehearsed.Sweeps(SweepRole.Covered, levels, levels)];
        DuplicateSweep[] found = [.. Copies.Among(two)];
        Assert.Equal(2, found.Length);
        Assert.All(found, twin => Assert.False(twin.SameKind));
    }

    [Fact]
    public void ACopyOfACopyOfAnotherKindIsStillACopyOfItsOwnKind()
    {
        double[] levels = [.. Enumerable.Range(0, 60).Select(i => -40 + (0.123456 * i))];
        ImmutableArray<Sweep> three =
            [.. Rehearsed.Sweeps(SweepRole.Reference, levels), .. Rehearsed.Sweeps(SweepRole.Covered, levels, levels)];
        Assert.Equal([false, true], Copies.Among(three).Select(twin => twin.SameKind));
    }

    [Theory]
    [InlineData(0.01, 0.02)]
    [InlineData(0.1, 0.02)]
    [InlineData(0.5, 0.05)]
    [InlineData(1, 0.1)]
    [InlineData(1, 0.02)]
    public void SteadySweepsOnACoarseDisplayAreNotDropped(double step, double scatter)
    {
        // Repeats that were really taken: 60 campaigns of 201 points, five sweeps of each role, once with an offset between
        // sweeps and once without. Less than one in 1000 pairs may be taken for a copy: of 2400 pairs that is a Poisson mean of
        // 2.4, which exceeds 8 once in 1000 times; each pair that agrees is one finding at most.
        int dropped = 0;
        for (int seed = 1; seed <= 60; seed++)
        {
            RehearsalPlan plan = Once(201, step) with
            {
                Seed = (ulong)seed,
                ScatterDb = scatter,
                SweepDeviationDb = seed % 2 * 0.05,
                FloorSweeps = 5,
                ReferenceSweeps = 5,
                CoveredSweeps = 5,
            };
            dropped += Copies.Among(Rehearser.Draw(plan).Campaign.Sweeps).Length;
        }

        Assert.InRange(dropped, 0, 8);
    }

    [Fact]
    public void OrderAndACommonShiftChangeNothing()
    {
        var random = new RandomSource(4);
        double[] levels = [.. Enumerable.Range(0, 60).Select(_ => -40 + random.Normal())];
        double[] other = [.. levels.Select(l => l + (0.1 * random.Normal()))];
        foreach (double shift in new[] { 0.0, 12.345 })
        {
            double[][] moved = [.. new[] { levels, other, levels }.Select(l => l.Select(x => x + shift).ToArray())];
            Assert.Single(Copies.Among(Of(moved)));
            Assert.Single(Copies.Among(Of([.. moved.Reverse()])));
        }
    }

    private static RehearsalPlan Once(int points, double step) => new()
    {
        Points = points,
        QuantisationDb = step,
        ReferenceRippleDb = 6,
        ShieldingStartDb = 20,
        ShieldingStopDb = 50,
        ScatterDb = 0.2,
        FloorSweeps = 1,
        ReferenceSweeps = 1,
        CoveredSweeps = 1,
    };

    // Every level a tenth under the one before.
    private static double[] Staircase(int points) => [.. Enumerable.Range(0, points).Select(i => Math.Round(-30 - (0.1 * i), 1))];

    private static ImmutableArray<Sweep> Twice(double[] levels) => Of(levels, levels);

    private static ImmutableArray<Sweep> Of(params double[][] levels) => [.. Rehearsed.Sweeps(SweepRole.Reference, levels)];
}
