using SweepStats.Alignment;
using SweepStats.Clipping;
using SweepStats.Sweeps;
using Xunit;

namespace SweepStats.Tests.Clipping;

public sealed class ClippedReadingsTests
{
    // Three sweeps of nine frequencies against a limit of −30 dBm: all three stand at it at the fourth to seventh, the first
    // alone at the third, the last alone at the last.
    private static readonly double[][] Flat =
    [
        [-33.1, -31.2, -30, -30, -30, -30, -30, -30.4, -32.2],
        [-33.4, -31.5, -30.3, -30, -30, -30, -30, -30.7, -32.9],
        [-33.2, -31.4, -30.1, -30, -30, -30, -30, -30.9, -30],
    ];

    private static readonly double[] Below = [-70.1, -71.2, -70.5, -72.4, -70.9, -71.6, -70.2, -71.9, -72.8];

    [Fact]
    public void OneSweepAtAnEstablishedLimitIsEnough()
    {
        ClippedReadings found = In(Flat, [Below, Shifted(Below, 0.3)]).Reference;
        Assert.Equal((ClippingKind.Wide, -30, 4), (found.Kind, found.LevelDb, found.Longest));
        Assert.Equal([2, 3, 4, 5, 6, 8], Places(found));
        // Four frequencies of three sweeps, and two of one.
        Assert.Equal(14, found.ReadingCount);
        Assert.Equal(6, found.Count);
    }

    [Fact]
    public void ASweepThatStaysBelowTheLimitIsNotCutOffAtItsOwnHighest()
    {
        double[] low = [-34.1, -32.2, -31.3, -30.6, -30.5, -30.55, -30.8, -31.4, -33.2];
        ClippedReadings found = In([.. Flat, low, Shifted(low, -0.2)], [Below, Shifted(Below, 0.3)]).Reference;
        Assert.Equal([2, 3, 4, 5, 6, 8], Places(found));
    }

    [Fact]
    public void ShiftAndOrderOfTheSweepsChangeNothing()
    {
        int[] places = Places(In(Flat, [Below]).Reference);
        Assert.Equal(places, Places(In([.. Flat.Select(s => Shifted(s, 12.5))], [Shifted(Below, 12.5)]).Reference));
        Assert.Equal(places, Places(In([.. Flat.Reverse()], [Below]).Reference));
    }

    [Fact]
    public void ALimitThatTheReferenceShowsHoldsForCoveredSweepsToo()
    {
        double[] touching = Shifted(Below, 0);
        touching[4] = -30;
        CampaignClipping found = In(Flat, [touching, Below]);
        ClippedReadings covered = Assert.Single(found.Covered);
        Assert.Equal(ClippingKind.Shared, covered.Kind);
        Assert.Equal([4], Places(covered));

        // Readings above it show that it is no limit there.
        touching[5] = -29.4;
        Assert.Equal(ClippingKind.None, Assert.Single(In(Flat, [touching, Below]).Covered).Kind);
    }

    [Fact]
    public void NothingIsCutOffWhereNoLimitShows()
    {
        CampaignClipping found = In([Below, Shifted(Below, 0.2)], [Shifted(Below, -20), Shifted(Below, -20.1)]);
        Assert.All(found.Covered.Prepend(found.Reference), c => Assert.Same(ClippedReadings.None, c));
        Assert.False(ClippedReadings.None.IsAt(3));
        Assert.Equal(0, ClippedReadings.None.Count);
    }

    private static CampaignClipping In(double[][] reference, double[][] covered) => ClippingSearch.In(Aligner.Align(
        Rehearsed.Campaign(
            Rehearsed.Sweeps(SweepRole.Reference, reference), Rehearsed.Sweeps(SweepRole.Covered, covered)), null), floor: null);

    private static double[] Shifted(double[] levels, double by) => [.. levels.Select(l => l + by)];

    private static int[] Places(ClippedReadings found) => [.. Enumerable.Range(0, found.Points.Length).Where(found.IsAt)];
}
