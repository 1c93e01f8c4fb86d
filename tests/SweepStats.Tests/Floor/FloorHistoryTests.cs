using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
using SweepStats.Tests.Checks;
using Xunit;

namespace SweepStats.Tests.Floor;

public sealed class FloorHistoryTests
{
    private static readonly RehearsalPlan Plan = Rehearsed.Plan with { FloorSweeps = 6, Looks = 20 };

    [Fact]
    public void MeasuredOnceItMayHaveMovedByTheUsualOrTheStatedAmount()
    {
        Assert.Equal(FloorHistory.UsualStabilityDb, Of(SweepTaking.Once, 0)!.HalfWidthDb);
        Assert.Equal(0.3, Of(SweepTaking.Once, 0, 0.3)!.HalfWidthDb);
        Assert.False(Of(SweepTaking.Unstated, 0)!.IsKnown);
        Assert.Null(
            FloorHistory.Of(Aligner.Align(Rehearser.Draw(Plan with { FloorSweeps = 0 }).Campaign, null), SweepTaking.Once, null));
    }

    // Half of what lies between the two, and nothing where they agree within their scatter.
    [Theory]
    [InlineData(0, 0, 0)]
    [InlineData(1, 0.4, 0.6)]
    [InlineData(-2, 0.85, 1.15)]
    public void BeforeAndAfterItLiesBetweenTheTwo(double change, double low, double high)
    {
        FloorHistory history = Of(SweepTaking.BeforeAndAfter, change)!;
        Assert.True(history.Bracketed);
        Assert.InRange(history.HalfWidthDb, low, high);
        Assert.InRange(history.ChangeDb!.Value, change - 0.3, change + 0.3);
    }

    [Fact]
    public void TimesTellByThemselves()
    {
        Campaign timed = Rehearser.Draw(Plan with { StartsAt = new DateTimeOffset(2026, 3, 5, 8, 0, 0, TimeSpan.Zero) }).Campaign;
        Assert.True(FloorHistory.Of(Aligner.Align(timed, null), SweepTaking.Unstated, null)!.Bracketed);
        Campaign early =
            timed with
            {
                Sweeps = [.. timed.Sweeps.Where(s => s.Role != SweepRole.Floor),
                .. timed.Sweeps.Where(s => s.Role == SweepRole.Floor).Take(3)],
            };
        FloorHistory once = FloorHistory.Of(Aligner.Align(early, null), SweepTaking.BeforeAndAfter, null)!;
        Assert.False(once.Bracketed);
        Assert.True(once.IsKnown);
    }

    // A change of 2 dB shows: the statement that nothing moves more than 0.1 dB does not hold.
    [Fact]
    public void WhatShowsGoesBeforeWhatIsStated()
    {
        Assert.InRange(Of(SweepTaking.BeforeAndAfter, 2, 0.1)!.HalfWidthDb, 0.85, 1.15);
        Assert.Equal(3, Of(SweepTaking.BeforeAndAfter, 2, 3)!.HalfWidthDb);
    }

    // Six sweeps before, two after: their mean lies a quarter of the change from the earlier and three quarters from the later.
    [Fact]
    public void TheMeanOfAllLiesNearerToTheSideWithMoreSweeps()
    {
        DateTimeOffset first = new(2026, 3, 5, 8, 0, 0, TimeSpan.Zero);
        Campaign drawn = Rehearser.Draw(Plan with { FloorSweeps = 8 }).Campaign;
        Sweep[] floor = [.. drawn.Sweeps.Where(s => s.Role == SweepRole.Floor)];
        Sweep[] others = [.. drawn.Sweeps.Where(s => s.Role != SweepRole.Floor)];
        Sweep At(Sweep s, int minute, double by) =>
            s.As(levels: [.. s.Levels.Select(l => l + by)], takenAt: first.AddMinutes(minute));
        Campaign uneven = drawn with
        {
            Sweeps =
            [
                .. floor.Select((s, j) => j < 6 ? At(s, j, 0) : At(s, 100 + j, 2)),
                .. others.Select((s, j) => At(s, 20 + j, 0)),
            ],
        };
        FloorHistory history = FloorHistory.Of(Aligner.Align(uneven, null), SweepTaking.Unstated, null)!;
        Assert.InRange(history.HalfWidthDb, 1.35, 1.65);
    }

    [Fact]
    public void WhereSweepsWereLeftOutNobodyKnowsWhichCameAfter()
    {
        Campaign drawn = Rehearser.Draw(Plan).Campaign;
        Sweep odd = drawn.Sweeps.First(s => s.Role == SweepRole.Floor);
        Campaign without = drawn with { Sweeps = [.. drawn.Sweeps.Select(s => s == odd ? s.As(excluded: "cable touched") : s)] };
        FloorHistory history = FloorHistory.Of(Aligner.Align(without, null), SweepTaking.BeforeAndAfter, null)!;
        Assert.False(history.Bracketed);
        Assert.Equal(FloorHistory.UsualStabilityDb, history.HalfWidthDb);
    }

    // Shifts and scale: what moves all levels alike changes nothing.
    [Fact]
    public void AShiftOfAllLevelsChangesNothing() =>
        Assert.Equal(Of(SweepTaking.BeforeAndAfter, 1)!.ChangeDb!.Value,
            Of(SweepTaking.BeforeAndAfter, 1, shift: 17)!.ChangeDb!.Value, 9);

    private static FloorHistory? Of(SweepTaking taking, double change, double? stability = null, double shift = 0)
    {
        int number = 0;
        Campaign campaign = Rehearser.Draw(Plan).Campaign;
        Campaign moved = campaign with
        {
            Sweeps = [.. campaign.Sweeps.Select(s => Rehearsed.Copy(s,
                [.. s.Levels.Select(l => l + shift + (s.Role == SweepRole.Floor && number >= 3 ? change : 0))])).Select(s =>
            {
                number += s.Role == SweepRole.Floor ? 1 : 0;
                return s;
            })],
        };
        return FloorHistory.Of(Aligner.Align(moved, null), taking, stability);
    }
}
