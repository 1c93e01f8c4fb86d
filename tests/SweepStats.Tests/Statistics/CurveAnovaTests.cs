using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CurveAnovaTests
{
    private static readonly int[] Groups = [0, 0, 0, 1, 1, 1, 1];

    [Fact]
    public void CurvesOfOnePointGiveFishersF()
    {
        double[] values = [1, 2, 3, 5, 6, 7, 8];
        OneWayAnova point = OneWayAnova.Of(values, Groups);
        CurveAnova curve = CurveAnova.Of([.. values.Select(v => new[] { v })], [1], Groups);
        Assert.Equal(point.F, curve.F, 1e-12 * point.F);
        Assert.Equal(1, curve.EffectivePoints, 1e-12);
        Assert.Equal(point.Probability, curve.ProbabilityOfEqualScatter, 1e-12);
    }

    [Fact]
    public void CurvesThatMoveAsAWholeAreWorthOnePoint()
    {
        double[] offsets = [1, 2.2, 3, 5, 6.5, 7, 8];
        CurveAnova one = CurveAnova.Of([.. offsets.Select(v => new[] { v })], [1], Groups);
        CurveAnova many = CurveAnova.Of([.. offsets.Select(v => Enumerable.Range(0, 50).Select(f => v + (f % 7)).ToArray())],
            [.. Enumerable.Repeat(0.02, 50)], Groups);
        Assert.Equal(1, many.EffectivePoints, 1e-9);
        Assert.Equal(one.Probability, many.Probability, 1e-9);
    }

    [Fact]
    public void ShiftScaleAndOrderDoNotMatter()
    {
        double[][] curves = Drawn(7, 20, 0.5, new RandomSource(3));
        double p = CurveAnova.Of(curves, Even(20), Groups).Probability;
        Assert.Equal(p, CurveAnova.Of([.. curves.Select(c => c.Select((v, f) => (v * 3) + f).ToArray())], Even(20),
            Groups).Probability, 1e-9);
        Assert.Equal(p,
            CurveAnova.Of([.. curves.Reverse()], Even(20), [.. Groups.Reverse().Select(g => 1 - g)]).Probability, 1e-9);
    }

    // Groups that stand apart in the list, blocks that are not full, and threads: the products are those of every two curves.
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    public void TheProductsAreThoseOfEveryTwoCurves(int threads)
    {
        int[] groups = [0, 1, 1, 0, 2, 2, 2, 2, 2, 0, 1];
        double[][] curves = Drawn(groups.Length, 21, 0.5, new RandomSource(8));
        var met = CurveProducts.Of(curves, groups, 3, threads);
        double Product(int i, int j) => curves[i].Zip(curves[j], (x, y) => x * y).Sum();
        Assert.All(Enumerable.Range(0, groups.Length), i => Assert.Equal(Product(i, i), met.Squares[i], 1e-12));
        for (int one = 0; one < 3; one++)
        {
            for (int other = 0; other < 3; other++)
            {
                double all = (from i in Enumerable.Range(0, groups.Length)
                              from j in Enumerable.Range(0, groups.Length)
                              where groups[i] == one && groups[j] == other
                              select Math.Pow(Product(i, j), 2)).Sum();
                Assert.Equal(all, met.OfGroups[one, other], 1e-12 * all);
            }
        }
    }

    // With few curves of many independent points the test is careful.
    [Theory]
    [InlineData(2, 3, 0)]
    [InlineData(2, 3, 0.9)]
    [InlineData(3, 3, 0.5)]
    [InlineData(3, 3, 0.99)]
    [InlineData(4, 6, 0.5)]
    [InlineData(2, 2, 0.5)]
    public void GroupsThatAreAlikeAreTakenForDifferentInFivePercent(int lots, int each, double common)
    {
        int draws = Draws.Of(2000);
        int[] groups = [.. Enumerable.Range(0, lots * each).Select(i => i / each)];
        var random = new RandomSource(17);
        int alarms = Enumerable.Range(0, draws)
            .Count(_ => CurveAnova.Of(Drawn(groups.Length, 30, common, random), Even(30), groups).Probability < 0.05);
        Often.AtMost(alarms, draws, 0.05, whenFull: 130);
    }

    [Fact]
    public void ALotThatIsOffIsFound()
    {
        var random = new RandomSource(5);
        int found = Enumerable.Range(0, 200).Count(_ =>
        {
            double[][] curves = Drawn(9, 30, 0.5, random);
            foreach (double[] curve in curves.Skip(6))
            {
                for (int f = 0; f < 10; f++)
                {
                    curve[f] += 4;
                }
            }

            return CurveAnova.Of(curves, Even(30), [0, 0, 0, 1, 1, 1, 2, 2, 2]).Probability < 0.05;
        });
        Assert.InRange(found, 150, 200);
    }

    [Fact]
    public void WhatCannotBeComparedIsRefused()
    {
        Assert.Throws<ArgumentException>(() => CurveAnova.Of([[1], [2]], [1], [0, 1]));
        Assert.Throws<ArgumentException>(() => CurveAnova.Of([[1], [2]], [1], [0, 0]));
        Assert.Throws<ArgumentException>(() => CurveAnova.Of([[1], [2, 3], [4]], [1], [0, 0, 1]));
    }

    private static double[] Even(int points) => [.. Enumerable.Repeat(1.0 / points, points)];

    // Standard normal points, of whose variance a share is common to the curve.
    private static double[][] Drawn(int curves, int points, double common, RandomSource random) =>
        [.. Enumerable.Range(0, curves).Select(_ =>
    {
        double whole = random.Normal() * Math.Sqrt(common);
        return Enumerable.Range(0, points).Select(_ => whole + (random.Normal() * Math.Sqrt(1 - common))).ToArray();
    })];
}

public sealed class ControlLimitsTests
{
    [Fact]
    public void ConstantsAgreeWithTheTable()
    {
        string[] head = File.ReadLines(Fixtures.PathOf("published/control-charts/constants.csv")).First().Split(',');
        foreach (double[] row in Fixtures.Numbers("published/control-charts/constants.csv"))
        {
            int n = (int)row[0];
            Assert.Equal(row[Array.IndexOf(head, "c4")], ControlLimits.C4(n), 1e-7);
            Assert.Equal(row[Array.IndexOf(head, "d2")], ControlLimits.D2(n), 1e-6);
            Assert.Equal(row[Array.IndexOf(head, "A3")], ControlLimits.A3(n), 1e-6);
            Assert.Equal(row[Array.IndexOf(head, "B3")], ControlLimits.B(n).Low, 1e-6);
            Assert.Equal(row[Array.IndexOf(head, "B4")], ControlLimits.B(n).High, 1e-6);
        }

        Assert.Throws<ArgumentOutOfRangeException>(() => ControlLimits.C4(1));
    }
}
