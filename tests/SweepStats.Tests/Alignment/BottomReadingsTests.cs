using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Rehearsal;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Alignment;

public sealed class BottomReadingsTests
{
    private static readonly RehearsalPlan Deep =
        new() { Points = 201, ShieldingStartDb = 40, ShieldingStopDb = 66, ReferenceRippleDb = 3, FloorDbm = -110 };

    [Theory]
    [InlineData(0, 0.2)]
    [InlineData(0.01, 0.2)]
    [InlineData(0.1, 0.2)]
    [InlineData(0.1, 0.02)]
    [InlineData(1, 0.2)]
    public void CoveredSweepsThatReachTheBottomOfTheDisplayAreFoundWhereTheyReachIt(double step, double scatter)
    {
        // From −70 dBm at the start to −96 dBm at the end of the band, cut off at −90 dBm: from 20/26 of the band on, give or
        // take the ripple of 1.5 dB.
        AlignedCampaign aligned = Cut(Deep with { QuantisationDb = step, ScatterDb = scatter }, -90);
        ImmutableArray<bool> bottom = BottomReadings.Find(aligned.Covered[0].Block, [aligned.Reference, aligned.Floor!]);
        Assert.Equal(Enumerable.Range(0, 201)
            .Select(f => Enumerable.Range(0, 5).Any(j => aligned.Covered[0].Block[j][f] <= -90)), bottom);
        Assert.InRange(bottom.Count(b => b), 25, 75);
        Assert.DoesNotContain(true, bottom.Take(110));
    }

    [Theory]
    [InlineData(0, 20)]
    [InlineData(0.1, 20)]
    [InlineData(0.5, 20)]
    [InlineData(1, 20)]
    [InlineData(0.1, 10_000)]
    [InlineData(1, 10_000)]
    [InlineData(0.01, 1)]
    public void WhatTheFloorHidesIsNoBottomOfADisplay(double step, double looks)
    {
        // 40 campaigns whose covered level falls 20 dB under the noise in the upper half of the band; one in a thousand may be
        // taken for cut off.
        int found = Enumerable.Range(1, 40).Count(seed =>
        {
            RehearsalPlan plan = Deep with
            {
                Seed = (ulong)seed,
                QuantisationDb = step,
                Looks = looks,
                ShieldingStopDb = 100,
                FloorDbm = -105 + (0.1 * (seed % 10)),
            };
            AlignedCampaign aligned = Aligner.Align(Rehearser.Draw(plan).Campaign, null);
            return !BottomReadings.Find(aligned.Covered[0].Block, [aligned.Reference, aligned.Floor!]).IsEmpty;
        });
        Assert.InRange(found, 0, 1);
    }

    [Fact]
    public void TheFlatBottomOfASmoothCurveOnACoarseDisplayIsNoEnd()
    {
        // A parabola 5 dB deep on steps of 1 dB: its lowest step is the longest by itself.
        double[] smooth = [.. Enumerable.Range(0, 201).Select(f => Math.Round(-95.4 + (5 * Math.Pow((f - 100) / 100.0, 2))))];
        Assert.Empty(Find(smooth, smooth, smooth));
    }

    [Fact]
    public void TheBottomThatAnotherSpecimenShowsHoldsForAll()
    {
        var random = new RandomSource(8);
        double[] Sweep(double level) =>
            [.. Enumerable.Range(0, 201).Select(_ => Math.Max(-90.123, level + (0.2 * random.Normal())))];
        SweepBlock deep = Rehearsed.Floor(Sweep(-90), Sweep(-90), Sweep(-90));
        double[] once = Sweep(-70);
        once[17] = -90.123;
        SweepBlock other = Rehearsed.Floor(once, Sweep(-70), Sweep(-70));
        Assert.Equal(17, BottomReadings.Find(other, [deep]).IndexOf(true));
        Assert.Empty(BottomReadings.Find(other, []));
    }

    [Fact]
    public void SweepsWithoutAnyMovementAreNotAliveFromTwelveFrequenciesOn()
    {
        Assert.Equal(Enumerable.Repeat(true, 12), Find([.. Enumerable.Repeat(-140.0, 12)], [.. Enumerable.Repeat(-140.1, 12)]));
        Assert.Empty(Find([.. Enumerable.Repeat(-140.0, 11)]));
    }

    private static ImmutableArray<bool> Find(params double[][] levels) => BottomReadings.Find(Rehearsed.Floor(levels), []);

    private static AlignedCampaign Cut(RehearsalPlan plan, double bottom) =>
        Aligner.Align(Rehearsed.Changed(Rehearser.Draw(plan).Campaign,
            (s, _, level) => s.Role == SweepRole.Covered ? Math.Max(bottom, level) : level), null);
}
