using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Quantities;
using SweepStats.Repeats;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Tests.Checks;
using Xunit;

namespace SweepStats.Tests.Repeats;

public sealed class StrayPlacementsTests
{
    // One sweep off by 8 dB leaves its placement where it is.
    [Fact]
    public void DrawnPlacementsAgreeWithR()
    {
        StrayPlacement stray = Assert.Single(StrayPlacements.Among(Drawn(), floor: null));
        double[] expected = Assert.Single(Fixtures.Numbers("oracles/wrong-sweeps-placements.csv"));
        Assert.Equal(("s2", "p2", true), (stray.Levels.Specimen.Specimen, stray.Named(stray.Off), stray.IsSingledOut));
        Agreement.Relative(1e-12, expected[2], stray.OffDb);
        Agreement.Relative(1e-12, expected[3], stray.AboveDb);
        Agreement.Relative(1e-10, expected[4], stray.Test!.T);
        Agreement.Relative(1e-9, expected[6], stray.Test.Probability);
        Assert.Equal((int)expected[5], stray.Test.DegreesOfFreedom);
    }

    // 0, 0, 9 and three of 0, 1, 2: 9 is off by 6, e²/(1 − 1/3) = 54. Left: 0 and 2, on 6 − 2 − 1 = 3 degrees of freedom: t² =
    // 54/(2/3) = 81.
    [Fact]
    public void ThreePlacementsGiveWhatHandArithmeticGives()
    {
        StrayPlacement stray = Assert.Single(StrayPlacements.Among(Of([[0, 0, 9], [0, 1, 2]]), floor: null));
        Assert.Equal((9, 9, 3), (stray.OffDb, stray.AboveDb, stray.MovedDb));
        // With probability 12·P(t₃ > 9) = 0.017 it is no matter of chance as this is set, but of distance.
        Assert.Null(stray.Test);
        Agreement.Relative(1e-12, 9, GroupedOutliers.Of([[0, 0, 9], [0, 1, 2]], 1, 0.02)[0].T);
    }

    [Fact]
    public void TwoPlacementsHaveLevelsAndOneHasNone()
    {
        Assert.Equal([0, 4], PlacementLevels.Of(Of([[0, 4]]).Covered[0], floor: null)!.Db);
        Assert.Null(PlacementLevels.Of(Of([[4]]).Covered[0], floor: null));
    }

    [Fact]
    public void LevelsOfSpecimensAndTheOrderOfSweepsChangeNothing()
    {
        AlignedCampaign drawn = Drawn();
        StrayPlacement plain = Assert.Single(StrayPlacements.Among(drawn, floor: null));
        StrayPlacement moved = Assert.Single(StrayPlacements.Among(
            Aligned([.. drawn.Covered.SelectMany(c => c.Block.Sweeps).Reverse()
                .Select(s => s.Shifted(7 * s.Specimen!.Length * s.Specimen[1]))]), floor: null));
        Assert.Equal(plain.Named(plain.Off), moved.Named(moved.Off));
        Agreement.Relative(1e-9, plain.AboveDb, moved.AboveDb);
        Agreement.Relative(1e-8, plain.Test!.T, moved.Test!.T);
    }

    // Halves that differ, and ends with one between them, are found in whatever order they were taken.
    [Fact]
    public void TheOrderOfPlacementsChangesNothing()
    {
        double[][] orders =
        [
            [0, 4, 0.1, 4.1], [0, 0.1, 4, 4.1], [4, 0, 0.1, 4.1], [4.1, 0.1, 4, 0], [-2.8, 0, 2.8], [0, 2.8, -2.8],
            [2.8, -2.8, 0], [0, -2.8, 2.8],
        ];
        foreach (double[] levels in orders)
        {
            double[] Quiet(int s) => [3 * s, (3 * s) + 0.1, (3 * s) - 0.1, (3 * s) + 0.05];
            StrayPlacement stray =
                Assert.Single(StrayPlacements.Among(Of([Quiet(3), Quiet(4), levels, Quiet(5), Quiet(6)]), floor: null));
            Assert.Equal("s3", stray.Levels.Specimen.Specimen);
            Assert.InRange(stray.AboveDb, 3.9, 5.7);
            Assert.InRange(stray.Test!.Probability, 0, StrayPlacements.FalseAlarm);
        }
    }

    // In twice the decibels the statistic stays; only the distances in dB that are worth telling do not.
    [Fact]
    public void TheStatisticDoesNotDependOnTheScale()
    {
        StrayPlacement plain = Assert.Single(StrayPlacements.Among(Drawn(), floor: null));
        StrayPlacement twice = Assert.Single(StrayPlacements.Among(
            Aligned([.. Drawn().Covered.SelectMany(c => c.Block.Sweeps)
                .Select(s => s.As(levels: [.. s.Levels.Select(l => 2 * l)]))]), floor: null));
        Agreement.Relative(1e-9, 2 * plain.AboveDb, twice.AboveDb);
        Agreement.Relative(1e-8, plain.Test!.T, twice.Test!.T);
    }

    [Theory]
    [InlineData(new double[] { 0, 6.5 }, "p2", false)]
    [InlineData(new double[] { 0, 0.4, 10 }, "p3", true)]
    [InlineData(new double[] { -10, 0.4, 0 }, "p1", true)]
    [InlineData(new double[] { 0, 10, 0.2, 10.3, 0.1 }, "p2 and p4", true)]
    [InlineData(new double[] { 0, 10, 0.2, 10.3 }, "p2 and p4", false)]
    [InlineData(new double[] { 0, 6, 12 }, "p3", false)]
    public void OneSpecimenAloneIsPartedByTheGap(double[] levels, string off, bool singledOut)
    {
        StrayPlacement stray = Assert.Single(StrayPlacements.Among(Of([levels]), floor: null));
        Assert.Equal((off, singledOut), (stray.Named(stray.Off), stray.IsSingledOut));
    }

    [Theory]
    [InlineData(new double[] { 0, 5.9 })]
    [InlineData(new double[] { 0, 1, 3 })]
    public void OneSpecimenAloneIsNotAccusedOfLess(double[] levels) =>
    Assert.Empty(StrayPlacements.Among(Of([levels]), floor: null));

    // Three specimens, the second placement of each swept without them: they hide each other until all are out.
    [Fact]
    public void PlacementsThatAreOffAlikeInEverySpecimenAreAllFound() =>
        Assert.Equal(["p2", "p2", "p2"],
            StrayPlacements.Among(Of([[0, 40, 0.3], [0.2, 40, 0], [0, 40.4, 0.1]]), floor: null).Select(s => s.Named(s.Off)));

    [Fact]
    public void NormalPlacementsAreNamedNoOftenerThanStated()
    {
        var random = new RandomSource(5);
        int alarms = Draws.Seeds(2000).Count(_ => StrayPlacements.Among(
            Of([.. Enumerable.Range(0, 4).Select(_ => Enumerable.Range(0, 3).Select(_ => random.Normal()).ToArray())]),
            floor: null).Length > 0);
        Often.AtMost(alarms, Draws.Of(2000), StrayPlacements.FalseAlarm);
    }

    private static AlignedCampaign Drawn() => Aligned(
    [
        .. Fixtures.Numbers("oracles/wrong-sweeps-sweeps.csv").Select(row => Sweep($"s{row[0]}", $"p{row[1]}", row[3..])),
    ]);

    // A sweep a placement, at one frequency more so that nothing is a copy.
    private static AlignedCampaign Of(double[][] specimens) => Aligned(
        [.. specimens.SelectMany(
            (levels, s) => levels.Select((level, p) => Sweep($"s{s + 1}", $"p{p + 1}", [level - 1, level + 1])))]);

    private static Sweep Sweep(string specimen, string placement, double[] levels) =>
        new($"{specimen}-{placement}", SweepRole.Covered, Rehearsed.Grid(levels.Length), [.. levels],
            LevelScale.DecibelMilliwatts)
        {
            Lot = "L",
            Specimen = specimen,
            Placement = placement,
        };

    private static AlignedCampaign Aligned(ImmutableArray<Sweep> covered) =>
        Aligner.Align(
            Rehearsed.Campaign(Rehearsed.Sweeps(SweepRole.Reference, new double[covered[0].Levels.Length]), covered), null);
}
