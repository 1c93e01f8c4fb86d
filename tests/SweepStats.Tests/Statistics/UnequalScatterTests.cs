using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

/// <summary>Means of groups that may scatter by unequal amounts.</summary>
public sealed class UnequalScatterTests
{
    // By hand: means 2 and 6.5 of 1, 2, 3 and 5, 6, 7, 8; variances 1 and 5/3. Welch's t² = 4.5²/(1/3 + 5/12) = 27 on
    // (3/4)²/((1/3)²/2 + (5/12)²/3) degrees of freedom.
    [Fact]
    public void TwoGroupsGiveWelchsTSquared()
    {
        VarianceRatio own = UnequalScatter.OfNumbers([3, 4], [2, 3], [1, 5.0 / 3]).Own(4.5 * 4.5 * 12 / 7 / 7, 5);
        Assert.Equal(27, own.F, 1e-12 * 27);
        Assert.Equal(1, own.UpperDegreesOfFreedom, 1e-12);
        Assert.Equal(0.5625 / ((1.0 / 18) + (25.0 / 432)), own.LowerDegreesOfFreedom, 1e-12);
    }

    // By hand: three pairs of variances 1, 1 and 4. D = 2/3·6 = 4; f₁ = 16/[1/3·18 + (6/3)²] = 1.6; a pair weighs as two degrees
    // less one: f₂ = 16/(4/9·18/2) − 1 = 3.
    [Fact]
    public void PairsWeighAsTwoDegreesLessOne()
    {
        VarianceRatio own = UnequalScatter.OfNumbers([2, 2, 2], [1, 1, 1], [1, 1, 4]).Own(ratio: 2, known: 3);
        Assert.Equal(2.0 * 6 / 4, own.F, 1e-12);
        Assert.Equal(1.6, own.UpperDegreesOfFreedom, 1e-12);
        Assert.Equal(3, own.LowerDegreesOfFreedom, 1e-12);
    }

    // By hand: 2 and 5 values, of variances 1 + 5 = 6 and 1 + 5/8 = 1.625: expected between 5/7·6 + 2/7·1.625 = 4.75, within 6 +
    // 4·1.625 = 12.5 on 12.5²/(36 + 4·1.625²) degrees.
    [Fact]
    public void SmallGroupsAreAllowedToScatterMore()
    {
        VarianceRatio small = UnequalScatter.SmallGroupsMore([2, 5], ratio: 1.9, known: 5);
        Assert.Equal(1.9 * 12.5 / 4.75, small.F, 1e-12);
        Assert.Equal(1, small.UpperDegreesOfFreedom, 1e-12);
        Assert.Equal(12.5 * 12.5 / (36 + (4 * 1.625 * 1.625)), small.LowerDegreesOfFreedom, 1e-12);
    }

    // R, from whole covariance matrices, the first by oneway.test (fixtures/oracles/unequal.R).
    [Fact]
    public void ItAgreesWithReference()
    {
        string[] sets = [.. Fixtures.Cells("oracles/unequal-tests.csv").Select(r => r[0])];
        foreach ((string set, double[] expected) in sets.Zip(Fixtures.Numbers("oracles/unequal-tests.csv")))
        {
            (double[][] curves, int[] groups) = Read(set);
            CurveAnova tested = CurveAnova.Of(curves, [.. Enumerable.Repeat(1.0, curves[0].Length)], groups);
            Assert.Equal(Math.Max(expected[4], expected[8]), tested.Probability, 1e-10);
            if (curves[0].Length == 1)
            {
                double[] values = [.. curves.Select(c => c[0])];
                Assert.Equal(Math.Max(expected[4], expected[8]),
                    CensoredAnova.Of(values, new bool[values.Length], groups)!.Probability, 1e-8);
                Agrees(expected, values, groups);
            }
        }
    }

    [Theory]
    [InlineData(3, 3, 1)]
    [InlineData(4, 2, 3)]
    [InlineData(2, 1, 4)]
    public void ShiftScaleAndOrderDoNotMatter(int first, int second, int third)
    {
        var random = new RandomSource(7);
        int[] groups = [.. Enumerable.Repeat(0, first), .. Enumerable.Repeat(1, second), .. Enumerable.Repeat(2, third)];
        double[] values = [.. groups.Select(g => ((g + 1) * random.Normal()) + g)];
        double p = Number(values, groups);
        Assert.Equal(p, Number([.. values.Select(v => (3 * v) - 40)], groups), 1e-8);
        Assert.Equal(p, Number([.. values.Reverse()], [.. groups.Reverse()]), 1e-8);
        Assert.Equal(p, Number(values, [.. groups.Select(g => (g + 1) % 3)]), 1e-8);
    }

    [Fact]
    public void GroupsOfOneSizeAndScatterLoseLittle()
    {
        // Four values each: by hand the own scatter has all its nine degrees of freedom, and the pattern is Fisher's F.
        VarianceRatio own = UnequalScatter.OfNumbers([4, 4, 4], [3, 3, 3], [2, 2, 2]).Own(1.4, 9),
            small = UnequalScatter.SmallGroupsMore([4, 4, 4], 1.4, 9);
        double fisher = new VarianceRatio(1.4, 2, 1, 9).Probability;
        Assert.Equal(fisher, own.Probability, 1e-12);
        Assert.Equal(fisher, small.Probability, 1e-12);
    }

    // 4 000 draws: 7 % is known to 0.4 % (one binomial deviation), two of which are allowed for. Fisher's F speaks in 25, 27, 7,
    // 1, 9, 10 and 16 % of them.
    [Theory]
    [InlineData("2 6", "3 1", 99)]
    [InlineData("2 6 6", "3 1 1", 99)]
    [InlineData("2 2", "3 1", 99)]
    [InlineData("2 6", "1 3", 99)]
    [InlineData("4 4 4", "3 1 1", 99)]
    [InlineData("2 2 2 2 2", "3 1 1 1 1", 99)]
    [InlineData("3 6", "3 1", 99)]
    [InlineData("1 6", "2 1", 99)]
    [InlineData("2 6", "3 1", 0.5)]
    [InlineData("2 6", "3 1", 0)]
    [InlineData("2 6 6", "3 1 1", 1)]
    [InlineData("4 4 4", "3 1 1", 0.5)]
    [InlineData("6 6", "3 1", 0)]
    public void AlikeGroupsOfUnequalScatterAreTakenForDifferentInSevenPercentAtMost(string sizes, string scatters, double cap)
    {
        const int Draws = 4000;
        (int[] groups, double[] scatter) =
            ([.. Numbers(sizes).SelectMany((n, l) => Enumerable.Repeat(l, (int)n))], Numbers(scatters));
        var random = new RandomSource(31);
        int alarms = 0, tested = 0;
        for (int draw = 0; draw < Draws; draw++)
        {
            double[] values = [.. groups.Select(g => scatter[g] * random.Normal())];
            bool[] censored = [.. values.Select(v => v > cap)];
            double? p = CensoredAnova.Of([.. values.Select(v => Math.Min(v, cap))], censored, groups)?.Probability;
            (alarms, tested) = (alarms + (p < 0.05 ? 1 : 0), tested + (p is null ? 0 : 1));
        }

        Assert.True(alarms <= Draws * 0.078, $"{100.0 * alarms / Draws:0.0} %");
        Assert.True(tested > Draws / 3);
    }

    private static void Agrees(double[] expected, double[] values, int[] groups)
    {
        double[][] each =
            [.. Enumerable.Range(0, groups.Max() + 1).Select(g => values.Where((_, i) => groups[i] == g).ToArray())];
        int[] sizes = [.. each.Select(g => g.Length)];
        double[] freedom = [.. sizes.Select(n => n - 1.0)],
            variances = [.. each.Select(g => g.Length > 1 ? Math.Pow(Sample.StandardDeviation(g), 2) : 0)];
        double whole = Sample.Mean(values), between = each.Sum(g => g.Length * Math.Pow(Sample.Mean(g) - whole, 2)),
            known = freedom.Sum();
        double ratio = between / freedom.Zip(variances, (v, s) => v * s).Sum();
        VarianceRatio own = UnequalScatter.OfNumbers(sizes, freedom, variances).Own(ratio, known),
            small = UnequalScatter.SmallGroupsMore(sizes, ratio, known);
        double[] found = [own.F, own.UpperDegreesOfFreedom, own.LowerDegreesOfFreedom, own.Probability, small.F,
            small.UpperDegreesOfFreedom, small.LowerDegreesOfFreedom, small.Probability];
        Assert.All(expected.Skip(1).Zip(found), pair => Assert.Equal(pair.First, pair.Second, 1e-10 * Math.Max(1, pair.First)));
    }

    private static (double[][] Curves, int[] Groups) Read(string set)
    {
        double[][] rows = [.. Fixtures.Numbers("oracles/unequal-values.csv").Zip(Fixtures.Cells("oracles/unequal-values.csv"))
            .Where(r => r.Second[0] == set).Select(r => r.First)];
        double[][][] curves = [.. rows.Chunk((int)rows.Max(r => r[2]) + 1)];
        return ([.. curves.Select(c => c.Select(r => r[3]).ToArray())], [.. curves.Select(c => (int)c[0][1])]);
    }

    private static double Number(double[] values, int[] groups) =>
        CensoredAnova.Of(values, new bool[values.Length], groups)!.Probability;

    private static double[] Numbers(string text) => [.. text.Split(' ').Select(double.Parse)];
}

public sealed class CombinedTestsTests
{
    // R, pcauchy of the mean of qcauchy (fixtures/oracles/unequal.R).
    [Fact]
    public void ItAgreesWithReference()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/unequal-combined.csv"))
        {
            Assert.Equal(row[3], CombinedTests.Probability([.. row.Take(3).Where(p => p >= 0)]), 1e-12);
        }
    }

    [Fact]
    public void TestsThatAgreeCostNothingAndOneThatSeesNothingTakesNothingAway()
    {
        Assert.Equal(0.03, CombinedTests.Probability([0.03, 0.03]), 1e-14);
        Assert.Equal(CombinedTests.Probability([0.001, 0.5]), CombinedTests.Probability([0.001, 0.999]), 1e-14);
        Assert.Equal(0.002, CombinedTests.Probability([0.001, 1]), 1e-6);
        Assert.Equal(0.6, CombinedTests.Probability([0.6, 0.9]), 1e-14);
        Assert.Equal(0, CombinedTests.Probability([0, 0.4]));
        Assert.Throws<ArgumentException>(() => CombinedTests.Probability([]));
        Assert.Throws<ArgumentException>(() => CombinedTests.Probability([double.NaN]));
    }

    // 20 000 draws: 5 % is known to 0.15 %. Two normal statistics that go together from not at all to wholly.
    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    [InlineData(0.6)]
    [InlineData(0.9)]
    [InlineData(-0.5)]
    [InlineData(1)]
    public void HoweverTheTestsGoTogetherTheSizeIsKept(double together)
    {
        var random = new RandomSource(41);
        int alarms = 0;
        for (int draw = 0; draw < 20_000; draw++)
        {
            double one = random.Normal(), other = (together * one) + (Math.Sqrt(1 - (together * together)) * random.Normal());
            alarms += CombinedTests.Probability([Tail(one), Tail(other)]) < 0.05 ? 1 : 0;
        }

        Assert.InRange(alarms / 20_000.0, 0.04, 0.0585);
    }

    private static double Tail(double z) => StudentT.UpperTail(z, double.PositiveInfinity);
}

public sealed class ToleranceBoundTests
{
    // By hand: 3 below the quantile by the sample, 4 by what all share: 5.
    [Fact]
    public void ReachesAreCombinedByTheRootOfTheirSquares()
    {
        Assert.Equal(35, new ToleranceBound(40, 37).Less(4), 1e-12);
        Assert.Equal(37, new ToleranceBound(40, 37).Less(0), 1e-12);
        Assert.Equal(33, new ToleranceBound(37, 37).Less(4), 1e-12);
    }
}
