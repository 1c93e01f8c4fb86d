using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class GroupedOutliersTests
{
    [Fact]
    public void TwoGroupsGiveWhatHandArithmeticGives()
    {
        // 0, 1 and 10, 10, 12, 16: means 0.5 and 12; 16 is off by 4, e²/(1 − 1/4) = 64/3. Left behind: 0.5 and, about 32/3, 8/3:
        // 19/6 on 6 − 2 − 1 = 3.
        GroupedOutlier far = Assert.Single(GroupedOutliers.Of([[0, 1], [10, 10, 12, 16]], 1, 0.999));
        Assert.Equal((1, 3, 3), (far.Group, far.Place, far.DegreesOfFreedom));
        Agreement.Relative(1e-14, Math.Sqrt(64 / 3.0 / (19 / 18.0)), far.T);
        Agreement.Relative(1e-12, 12 * StudentT.UpperTail(far.T, 3), far.Probability);
    }

    [Fact]
    public void PublishedLayoutsAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/outliers-grouped.csv");
        double[][] rows = Fixtures.Numbers("oracles/outliers-grouped.csv");
        double[][] sirstv = Groups();
        double[][] planted = [.. sirstv.Select(g => g.ToArray())];
        planted[0][2] += 0.9;
        planted[^1][^1] -= 1.1;
        foreach ((string name, double[][] groups) in new[] { ("sirstv", sirstv), ("planted", planted),
            ("series", new[] { GeneralisedEsdTests.Case("mass"), GeneralisedEsdTests.Case("speed") }) })
        {
            // A level of almost 1 counts every step whose probability is below 1.
            IReadOnlyList<GroupedOutlier> steps = GroupedOutliers.Of(groups, 4, 1 - 1e-9);
            double[][] expected = [.. rows.Where((_, i) => cells[i][0] == name)];
            Assert.Equal(expected.ToList().FindLastIndex(row => row[6] < 1) + 1, steps.Count);
            for (int i = 0; i < steps.Count; i++)
            {
                Assert.Equal((expected[i][2], expected[i][3], expected[i][5]),
                    (steps[i].Group, steps[i].Place, steps[i].DegreesOfFreedom));
                Agreement.Relative(1e-9, expected[i][4], steps[i].T, i);
                Agreement.Relative(1e-8, expected[i][6], steps[i].Probability, i);
            }
        }

        Assert.Equal(2, GroupedOutliers.Of(planted, 3, 0.02).Count);
    }

    [Theory]
    [InlineData("rosner", 10)]
    [InlineData("naphthalene", 2)]
    public void OneGroupIsTheGeneralisedDeviate(string name, int most)
    {
        double[] values = GeneralisedEsdTests.Case(name);
        GeneralisedEsd one = GeneralisedEsd.Of(values, most, 0.05);
        Assert.NotEmpty(one.Outliers);
        Assert.Equal(one.Outliers, GroupedOutliers.Of([values], most, 0.05).Select(o => o.Place));
    }

    [Fact]
    public void ShiftsOfAGroupItsOrderAndScaleChangeNothing()
    {
        double[][] groups = Groups();
        IReadOnlyList<GroupedOutlier> plain = GroupedOutliers.Of(groups, 1, 1 - 1e-9);
        double[][] moved = [.. groups.Select((g, j) => g.Reverse().Select(v => (v * -3) + (50 * j)).ToArray())];
        GroupedOutlier other = Assert.Single(GroupedOutliers.Of(moved, 1, 1 - 1e-9));
        Agreement.Relative(1e-8, plain[0].T, other.T);
        Assert.Equal((plain[0].Group, groups[plain[0].Group].Length - 1 - plain[0].Place), (other.Group, other.Place));
    }

    [Fact]
    public void CleanGroupsAlarmAsOftenAsTheLevelSays()
    {
        var random = new RandomSource(25);
        int alarms = Enumerable.Range(0, 4000).Count(_ => GroupedOutliers.Of([Draw(5), Draw(5)], 1, 0.05).Count > 0);
        // 200 expected; 4 binomial deviations are 55.
        Assert.InRange(alarms, 145, 255);

        double[] Draw(int count) => [.. Enumerable.Range(0, count).Select(_ => random.Normal())];
    }

    [Fact]
    public void OutliersOfTwoGroupsThatHideEachOtherAreBothFound()
    {
        double[][] groups = [[0, 0.1, -0.1, 0.05, 2], [7, 7.1, 6.9, 7.05, 5]];
        Assert.Equal([(0, 4), (1, 4)], GroupedOutliers.Of(groups, 2, 0.02).Select(o => (o.Group, o.Place)).Order());
        Assert.Empty(GroupedOutliers.Of(groups, 1, 0.02));
    }

    [Fact]
    public void ThousandsOfPairsGiveWhatTheirDifferencesGive()
    {
        // Of two values each lies as far off as the other: the farthest pair has e²/(1 − ½) = d²/2, and what is left Σd²/2 of the
        // others on one degree of freedom a pair.
        var random = new RandomSource(31);
        double[][] pairs = [.. Enumerable.Range(0, 3000).Select(i => new[] { i, i + random.Normal() })];
        pairs[1234][1] += 40;
        IReadOnlyList<GroupedOutlier> found = GroupedOutliers.Of(pairs, 600, 0.02);
        double[] others = [.. pairs.Where((_, i) => i != 1234).Select(p => p[1] - p[0])];
        double away = pairs[1234][1] - pairs[1234][0];
        Assert.Equal((1234, 2999), (found[0].Group, found[0].DegreesOfFreedom));
        Agreement.Relative(1e-9, Math.Abs(away) / Math.Sqrt(others.Sum(d => d * d) / 2999), found[0].T);
        Assert.Single(found);
    }

    [Fact]
    public void WhatCannotBeJudgedGivesNone()
    {
        Assert.Empty(GroupedOutliers.Of([[1], [2], [3, 5]], 2, 0.5));
        Assert.Empty(GroupedOutliers.Of([[1, 1, 1], [4, 4, 4]], 2, 0.5));
        Assert.Single(GroupedOutliers.Of([[1, 1, 1], [4, 4, 4, 9]], 2, 0.01));
        Assert.Throws<ArgumentException>(() => GroupedOutliers.Of([[1, 2, double.NaN]], 1, 0.05));
        Assert.Throws<ArgumentOutOfRangeException>(() => GroupedOutliers.Of([[1, 2, 3]], 0, 0.05));
    }

    private static double[][] Groups() =>
        [.. Fixtures.Numbers("published/nist-strd-anova/SiRstv.csv").GroupBy(row => row[0])
            .Select(g => g.Select(row => row[1]).ToArray())];
}
