using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Quantities;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Floor;

public sealed class FloorLifeTests
{
    private static readonly RehearsalPlan Plan =
        new() { Points = 201, ReferenceRippleDb = 3, ShieldingStartDb = 20, ShieldingStopDb = 40 };

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.1)]
    [InlineData(0)]
    public void FiveSweepsOfExactlyOneLevelAreNoFloor(double step)
    {
        FloorLife life = Life(Plan with { QuantisationDb = step }, _ => -140);
        Assert.Equal(FloorState.Stuck, life.State);
        Assert.Equal((1005, 1005, -140.0), (life.Tied, life.ReadingCount, life.LevelDb));
        Assert.False(life.Lives);
    }

    [Fact]
    public void OnADisplayOfWholeDecibelsItMayBeNoiseAveragedForLongAndIsNotTakenForAFloor()
    {
        FloorLife life = Life(Plan with { QuantisationDb = 1 }, _ => -140);
        Assert.Equal(FloorState.Hidden, life.State);
        Assert.False(life.Lives);
    }

    [Fact]
    public void SweepsThatStandStillEachAtItsOwnLevelAreNoFloor()
    {
        Campaign campaign = Rehearser.Draw(Plan).Campaign;
        var floors = campaign.Sweeps.Where(s => s.Role == SweepRole.Floor).ToList();
        Campaign still =
            Rehearsed.Changed(campaign, (s, _, level) => s.Role == SweepRole.Floor ? -120 - (0.37 * floors.IndexOf(s)) : level);
        Assert.Equal(FloorState.Stuck, FloorLife.Of(Aligner.Align(still, null))!.State);
    }

    [Fact]
    public void AFewTypedLevelsLive()
    {
        // 24 readings of noise of 100 looks (0.43 dB) stand in one step of 1 dB with chance 0.751^23 = 0.0014; 25 with 0.0010.
        Assert.Equal(FloorState.Alive, Typed(8, 3).State);
        Assert.Equal(FloorState.Hidden, Typed(26, 1).State);
    }

    [Theory]
    [InlineData(0.02, FloorState.PartlyClipped)]
    [InlineData(0.15, FloorState.PartlyClipped)]
    [InlineData(0.35, FloorState.Clipped)]
    [InlineData(0.7, FloorState.Clipped)]
    public void AsMuchAsTheDisplayCutsOffDecides(double share, FloorState state)
    {
        double bottom = Quantile(share);
        foreach (double step in new[] { 0, 0.1 })
        {
            FloorLife life =
                Life(Plan with { QuantisationDb = step }, level => Math.Max(step > 0 ? Math.Round(bottom, 1) : bottom, level));
            Assert.True(life.State == state || (state == FloorState.Clipped && life.State == FloorState.Stuck), $"{life}");
            Assert.InRange((double)life.Tied / life.ReadingCount, share - 0.06, share + 0.06);
        }
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(20, 5)]
    [InlineData(200, 3)]
    public void ADisplayWithStepsHidesAClippedFloorLessThanItsStepsAreCoarse(double looks, int sweeps)
    {
        // Seven tenths cut off, steps a tenth of the scatter: found in 38 of 40 and more.
        double step = looks == 1 ? 0.5 : looks == 20 ? 0.1 : 0.05;
        double bottom = Math.Round(
            (-100 + new DetectorNoise(looks).LogMeanOffset + new DetectorNoise(looks).HighestReading(0.7)) / step) * step;
        int found = Enumerable.Range(1, 40).Count(seed =>
            !Life(Plan with { Seed = (ulong)seed, Looks = looks, FloorSweeps = sweeps, QuantisationDb = step },
                level => Math.Max(bottom, level)).Lives);
        Assert.InRange(found, 36, 40);
    }

    [Theory]
    [InlineData(0, 10)]
    [InlineData(0.01, 10)]
    [InlineData(0.1, 201)]
    [InlineData(0.5, 201)]
    [InlineData(1, 51)]
    public void LiveFloorsAreNotTakenForDeadAndDoNotHideUnlessAveragedForLong(double step, int points)
    {
        // Flat floors at all places between two steps, 1 to 1000 looks (100 on steps of 1 dB), one to five sweeps: 60 each,
        // none expected.
        int dead = 0;
        foreach (double looks in new[] { 1.0, 20, step == 1 ? 100 : 1000 })
        {
            for (int seed = 1; seed <= 20; seed++)
            {
                RehearsalPlan plan = Plan with
                {
                    Seed = (ulong)seed,
                    Points = points,
                    Looks = looks,
                    FloorSweeps = 1 + (seed % 5),
                    QuantisationDb = step,
                    FloorDbm = -100 + (step * seed / 20),
                };
                dead += FloorLife.Of(Aligner.Align(Rehearser.Draw(plan).Campaign, null))!.State == FloorState.Alive ? 0 : 1;
            }
        }

        Assert.Equal(0, dead);
    }

    [Fact]
    public void FlatFloorsOfTenThousandLooksHideOnCoarseStepsOnlyAndAreNeverCalledStuck()
    {
        // Middle of a step of 1 dB, 23 scatters wide. With a slope of 3 dB, or half a step aside, it moves.
        RehearsalPlan still = Plan with { Looks = 10_000, QuantisationDb = 1, FloorDbm = -100 };
        Assert.Equal(FloorState.Hidden, FloorLife.Of(Aligner.Align(Rehearser.Draw(still).Campaign, null))!.State);
        Assert.True(FloorLife.Of(Aligner.Align(Rehearser.Draw(still with { FloorTiltDb = 3 }).Campaign, null))!.Lives);
        Assert.True(FloorLife.Of(Aligner.Align(Rehearser.Draw(still with { FloorDbm = -100.5 }).Campaign, null))!.Lives);
    }

    [Fact]
    public void TransmittersOnACoarseDisplayDoNotLookLikeABottom()
    {
        RehearsalPlan busy = Plan with
        {
            Points = 401,
            Looks = 1000,
            QuantisationDb = 0.5,
            Ambient = [.. Enumerable.Range(1, 12)
                .Select(i => new AmbientCarrier(new Hertz(i * 70e6), new Decibels(10), i % 2 == 0 ? 1 : 0.5))],
        };
        Assert.All(Enumerable.Range(1, 20), seed =>
            Assert.True(FloorLife.Of(Aligner.Align(Rehearser.Draw(busy with { Seed = (ulong)seed }).Campaign, null))!.Lives));
    }

    [Fact]
    public void ShiftingAllLevelsChangesNothing()
    {
        double bottom = Quantile(0.3);
        FloorLife here = Life(Plan, level => Math.Max(bottom, level));
        Campaign moved = Rehearsed.Changed(Rehearser.Draw(Plan).Campaign,
            (s, _, level) => (s.Role == SweepRole.Floor ? Math.Max(bottom, level) : level) + 31.7);
        FloorLife there = FloorLife.Of(Aligner.Align(moved, null))!;
        Assert.Equal((here.State, here.Tied), (there.State, there.Tied));
        Assert.Equal(here.LevelDb + 31.7, there.LevelDb, 9);
    }

    [Fact]
    public void WithoutFloorSweepsThereIsNothingToLookAt() =>
    Assert.Null(FloorLife.Of(Aligner.Align(Rehearser.Draw(Plan with { FloorSweeps = 0 }).Campaign, null)));

    private static double Quantile(double share) =>
        -100 + new DetectorNoise(20).LogMeanOffset + new DetectorNoise(20).HighestReading(share);

    private static FloorLife Life(RehearsalPlan plan, Func<double, double> change) =>
        FloorLife.Of(Aligner.Align(Rehearsed.Changed(Rehearser.Draw(plan).Campaign,
            (s, _, level) => s.Role == SweepRole.Floor ? change(level) : level), null))!;

    private static FloorLife Typed(int points, int sweeps)
    {
        double[] floor = [.. Enumerable.Repeat(-104.0, points)];
        double[] other = [.. Enumerable.Range(0, points).Select(f => -30.0 - (f % 4))];
        return FloorLife.Of(Aligner.Align(Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Floor, [.. Enumerable.Repeat(floor, sweeps)]),
            Rehearsed.Sweeps(SweepRole.Reference, other),
            Rehearsed.Sweeps(SweepRole.Covered, [.. other.Select(l => l - 40)])), null))!;
    }
}
