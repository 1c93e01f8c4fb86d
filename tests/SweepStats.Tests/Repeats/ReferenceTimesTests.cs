using SweepStats.Alignment;
using SweepStats.Rehearsal;
using SweepStats.Repeats;
using SweepStats.Sweeps;
using SweepStats.Tests.Checks;
using Xunit;

namespace SweepStats.Tests.Repeats;

public sealed class ReferenceTimesTests
{
    private static readonly DateTimeOffset Morning = new(2026, 3, 5, 8, 0, 0, TimeSpan.Zero);
    private static readonly Campaign Two =
        Rehearser.Draw(Rehearsed.Plan with { SpecimensPerLot = 2, ReferenceSweeps = 4 }).Campaign;

    // Each specimen saw the reference on one side only, although it lies between the two.
    [Fact]
    public void AReferenceBetweenTwoSpecimensIsOnOneSideOfEach() =>
        Assert.Equal(ReferenceTiming.OneSide, Of(At(reference: [4, 4, 4, 4], first: 0, second: 8), SweepTaking.Unstated));

    [Fact]
    public void AReferenceOnBothSidesOfEachIsOnBoth() =>
        Assert.Equal(ReferenceTiming.BothSides, Of(At(reference: [0, 4, 6, 10], first: 2, second: 8), SweepTaking.Unstated));

    [Fact]
    public void WithoutTimesAStatementCounts()
    {
        Assert.Equal(ReferenceTiming.BothSides, Of(Two, SweepTaking.BeforeAndAfter));
        Assert.Equal(ReferenceTiming.OneSide, Of(Two, SweepTaking.Once));
        Assert.Equal(ReferenceTiming.Unknown, Of(Two, SweepTaking.Unstated));
    }

    // Of four, two on either side, one may be left out; of two that are left nobody knows.
    [Theory]
    [InlineData(0, ReferenceTiming.BothSides)]
    [InlineData(1, ReferenceTiming.BothSides)]
    [InlineData(2, ReferenceTiming.OneSide)]
    [InlineData(3, ReferenceTiming.OneSide)]
    public void AStatementHoldsAsLongAsSweepsOfBothSidesAreLeft(int leftOut, ReferenceTiming timing)
    {
        Sweep[] odd = [.. Two.Sweeps.Where(s => s.Role == SweepRole.Reference).Take(leftOut)];
        Campaign without =
            Two with { Sweeps = [.. Two.Sweeps.Select(s => odd.Contains(s) ? s.As(excluded: "cable touched") : s)] };
        Assert.Equal(timing, Of(without, SweepTaking.BeforeAndAfter));
    }

    private static ReferenceTiming Of(Campaign campaign, SweepTaking taking) =>
        ReferenceTimes.Of(Aligner.Align(campaign, null), taking);

    private static Campaign At(int[] reference, int first, int second)
    {
        int taken = 0;
        string specimen = Two.Sweeps.First(s => s.Role == SweepRole.Covered).Specimen!;
        Sweep Timed(Sweep s, int hour) => s.As(takenAt: Morning.AddHours(hour));
        return Two with
        {
            Sweeps =
            [
                .. Two.Sweeps.Select(s => s.Role == SweepRole.Reference ? Timed(s, reference[taken++])
                    : Timed(s, s.Specimen == specimen ? first : second)),
            ],
        };
    }
}
