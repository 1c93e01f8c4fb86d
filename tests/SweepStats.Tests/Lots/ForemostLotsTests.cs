using System.Globalization;
using SweepStats.Lots;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Lots;

/// <summary>Which lots cannot be told from the best, by the scatter of their specimens.</summary>
public sealed class ForemostLotsTests
{
    private static readonly double[][] Three = [[50.1, 50.4, 49.8], [52.9, 53.3, 53.0, 52.5], [52.6, 53.1]];

    private static bool[] Stay(double[][] lots, double level) => BestCandidates.Among(ForemostLots.Candidates(lots), level);

    // Both s² = 2, so t = 4/√(2·2/2) on the 2 degrees of freedom of both: one-sided P = (1 − t/√(2 + t²))/2 = 0.0528 (Student's t
    // with ν = 2 in closed form).
    [Theory]
    [InlineData(0.05, true)]
    [InlineData(0.055, false)]
    public void TwoLotsByHand(double level, bool stays)
    {
        double t = 4 / Math.Sqrt(2);
        Assert.Equal(0.0528, (1 - (t / Math.Sqrt(2 + (t * t)))) / 2, 5e-5);
        Assert.Equal([stays, true], Stay([[50, 52], [54, 56]], level));
    }

    // R, integrate() (fixtures/oracles/foremost-lots.R).
    [Theory]
    [InlineData(0.002)]
    [InlineData(0.01)]
    [InlineData(0.05)]
    [InlineData(0.15)]
    [InlineData(0.4)]
    public void TheyAreThoseThatRFinds(double level)
    {
        foreach (IGrouping<string, string[]> set in Fixtures.Cells("oracles/foremost-lots.csv").GroupBy(row => row[0]))
        {
            double[][] lots =
                [.. set.Select(row => row[2].Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray())];
            Assert.Equal(set.Select(row => double.Parse(row[3], CultureInfo.InvariantCulture) > level), Stay(lots, level));
        }
    }

    [Theory]
    [InlineData(0.001)]
    [InlineData(0.05)]
    [InlineData(0.3)]
    public void ShiftAndScaleChangeNothingAndOrderFollows(double level)
    {
        bool[] stay = Stay(Three, level);
        Assert.Equal(stay, Stay([.. Three.Select(lot => lot.Select(v => v - 32).ToArray())], level));
        Assert.Equal(stay, Stay([.. Three.Select(lot => lot.Select(v => 4 * v).ToArray())], level));
        Assert.Equal(stay.Reverse(), Stay([.. Three.Reverse().Select(lot => lot.Reverse().ToArray())], level));
    }

    [Fact]
    public void ALotOfOneSpecimenIsTakenToScatterAsTheOthersDo()
    {
        Assert.Equal([false, true, true], Stay([[45], [53, 53.4], [53.1, 53.2]], 0.05));
        CandidateMean alone = ForemostLots.Candidates([[45], [53, 53.4], [53.1, 53.2]])[0];
        // s² of both together: (0.08 + 0.005)/2.
        Assert.Equal(Math.Sqrt(0.0425), alone.StandardError, 1e-12);
        Assert.Equal((2.0, true), (alone.DegreesOfFreedom, alone.CommonScatter));
    }

    [Fact]
    public void NothingIsToldWhereNoSpecimensOfALotDiffer()
    {
        Assert.Empty(ForemostLots.Candidates([[45], [53]]));
        Assert.Empty(ForemostLots.Candidates([[45, 45], [53, 53]]));
        Assert.Empty(ForemostLots.Candidates([[45, double.NaN], [53, 54]]));
    }

    // All alike is the hardest case: each of the others may top the best. Uneven sizes and a best one that scatters more are what
    // benches have.
    [Theory]
    [InlineData(4, 4, 4, 1.0)]
    [InlineData(2, 2, 2, 1.0)]
    [InlineData(3, 5, 8, 1.0)]
    [InlineData(4, 4, 4, 2.0)]
    public void TheBestIsLeftOutInAtMostFiveOfAHundred(int best, int second, int third, double times)
    {
        int sets = Draws.Of(4000), missed = 0;
        var random = new RandomSource(20261129);
        double[] Lot(int count, double scatter) => [.. Enumerable.Range(0, count).Select(_ => 55 + (scatter * random.Normal()))];
        for (int set = 0; set < sets; set++)
        {
            missed += Stay([Lot(best, times), Lot(second, 1), Lot(third, 1)], 0.05)[0] ? 0 : 1;
        }

        Often.AtMost(missed, sets, 0.05);
    }
}
