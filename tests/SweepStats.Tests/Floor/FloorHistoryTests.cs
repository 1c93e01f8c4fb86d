using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Rehearsal;
using SweepStats.Sweeps;
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
        Assert.Null(FloorHistory.Of(Aligner.Align(Rehearser.Draw(Plan with { FloorSweeps = 0 }).Campaign, null), SweepTaking.Once, null));
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
        Campaign early = timed with { Sweeps = [.. timed.Sweeps.Where(s => s.Role != SweepRole.Floor), .. timed.Sweeps.Where(s => s.Role == SweepRole.Floor).Take(3)] };
        FloorHistory once = FloorHistory.Of(Aligner.Align(early, null), SweepTaking.BeforeAndAfter, null)!;
        Assert.False(once.Bracketed);
        Assert.True(once.IsKnown);
    }

    // Shifts and scale: what moves all levels alike changes nothing.
    [Fact]
    public void AShiftOfAllLevelsChangesNothing() =>
        Assert.Equal(Of(SweepTaking.BeforeAndAfter, 1)!.ChangeDb!.Value, Of(SweepTaking.BeforeAndAfter, 1, shift: 17)!.ChangeDb!.Value, 9);

    private static FloorHistory? Of(SweepTaking taking, double change, double? stability = null, double shift = 0)
    {
        int number = 0;
        Campaign campaign = Rehearser.Draw(Plan).Campaign;
        Campaign moved = campaign with
        {
            Sweeps = [.. campaign.Sweeps.Select(s => Rehearsed.Copy(s, [.. s.Levels.Select(l => l + shift + (s.Role == SweepRole.Floor && number >= 3 ? change : 0))])).Select(s =>
            {
                number += s.Role == SweepRole.Floor ? 1 : 0;
                return s;
            })],
        };
        return FloorHistory.Of(Aligner.Align(moved, null), taking, stability);
    }
}
