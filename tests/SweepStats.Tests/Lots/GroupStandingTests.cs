using System.Globalization;
using SweepStats.Lots;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Lots;

public sealed class GroupStandingTests
{
    // ASTM E691, glucose in serum, material E: h and k of laboratories A to H (recomputed, GroupPrecisionTests). Critical values
    // for eight laboratories of three repeats: fixtures/published/iso-5725.
    [Fact]
    public void GlucoseStandsAsPublished()
    {
        double[] h = [-0.46, 1.64, -0.68, 0.49, -0.34, 0.17, -1.62, 0.79], k = [0.18, 2.33, 0.69, 0.22, 0.24, 1.03, 0.84, 0.42];
        GroupStanding found = GroupStanding.Of(Glucose("E"))!;
        Assert.Equal(["A", "B", "C", "D", "E", "F", "G", "H"], found.Members.Select(m => m.Name));
        Assert.All(found.Members, m => Assert.Equal(3, m.Count));
        for (int lab = 0; lab < 8; lab++)
        {
            Assert.Equal(h[lab], found.Members[lab].H, 0.0051);
            Assert.Equal(k[lab], found.Members[lab].K, 0.0051);
        }

        // s_r as printed, 3.935 (from memory); C is the largest k² over the number of laboratories.
        Assert.Equal(3.935, found.RepeatabilityDb, 0.0005);
        Assert.Equal("B", found.Cochran.Name);
        Assert.Equal(2.33 * 2.33 / 8, found.Cochran.Statistic, 0.003);
        // Of single values of different laboratories: never less than within one.
        Assert.True(found.ReproducibilityDb > found.RepeatabilityDb);
    }

    [Fact]
    public void CriticalValuesAreThoseOfTheTables()
    {
        double[] cochran = Fixtures.Numbers("published/iso-5725/cochran-and-k.csv").Single(r => r[0] == 8 && r[1] == 3);
        double[] grubbs = Fixtures.Numbers("published/iso-5725/grubbs-and-h.csv").Single(r => r[0] == 8);
        GroupStanding found = GroupStanding.Of(Glucose("A"))!;
        Assert.All(found.Members, m => Assert.Equal(new(cochran[6], cochran[5]), m.CriticalK, Close));
        // C reaches the table's value where its probability is the level.
        Assert.Equal(0.05, 8 * GroupConsistency.ShareProbability(cochran[3], 2, 14), 0.0001);
        Assert.Equal(0.01, 8 * GroupConsistency.ShareProbability(cochran[2], 2, 14), 0.0001);
        Assert.Equal(8 * GroupConsistency.ShareProbability(found.Cochran.Statistic, 2, 14), found.Cochran.Probability, 1e-12);
        Assert.Equal(new(grubbs[7], grubbs[6]), found.CriticalH, Close);
    }

    // ISO 5725-2:1994, B.3 leaves laboratory 1 out, which is outermost everywhere and past Grubbs' 1 % at levels 3 and 4, and
    // laboratory 6 at level 5 (from memory).
    [Fact]
    public void CreosoteOilHasTheOutliersThatWereLeftOut()
    {
        Dictionary<string, GroupStanding> levels =
            Enumerable.Range(1, 5).Select(l => $"{l}").ToDictionary(l => l, l => GroupStanding.Of(Creosote(l))!);
        Assert.All(levels.Values, found => Assert.Equal("1", found.Grubbs.Name));
        Assert.Equal(["3", "4"], levels.Where(l => l.Value.Grubbs.Probability < GroupStanding.OutlierLevel).Select(l => l.Key));
        GroupStanding fifth = levels["5"];
        Assert.Equal("6", fifth.Cochran.Name);
        Assert.Equal(["6"], fifth.Members.Where(m => m.K > m.CriticalK.Outlier).Select(m => m.Name));
    }

    // Grubbs' G of the means is the largest |h|, and its probability falls to the level where G reaches the table's value.
    [Fact]
    public void GrubbsIsOfTheOutermostMean()
    {
        GroupStanding found = GroupStanding.Of(Glucose("B"))!;
        Assert.Equal("D", found.Grubbs.Name);
        Assert.Equal(found.Members.Max(m => Math.Abs(m.H)), found.Grubbs.Statistic, 1e-9);
        Assert.True(found.Grubbs.Statistic < 2.1266 && found.Grubbs.Probability > 0.05);
        GroupStanding off = GroupStanding.Of(
            [.. Glucose("B").Select(g =>
                g.Name == "D" ? new GroupValues(g.Name, [.. g.Values.Select(v => v + 20)]) : g)])!;
        Assert.True(off.Grubbs.Statistic > 2.2744 && off.Grubbs.Probability < 0.01);
    }

    // Six values have most of the squares by their number alone; the two that lie 5 apart have less and are the less likely.
    [Fact]
    public void EachScatterIsHeldToItsOwnNumberOfValues()
    {
        GroupStanding mixed = GroupStanding.Of(
            [new("A", [1, 2]), new("B", [2, 7]), new("C", [3, 3.5]), new("D", [1, 2, 3, 4, 5, 6]), new("E", [3])])!;
        Assert.Equal([2, 2, 2, 6, 1], mixed.Members.Select(m => m.Count));
        Assert.True(double.IsNaN(mixed.Members[4].K) && double.IsNaN(mixed.Members[4].CriticalK.Straggler)
            && double.IsNaN(mixed.Members[4].CriticalK.Outlier));
        Assert.Equal(mixed.Members[0].CriticalK, mixed.Members[1].CriticalK);
        Assert.True(mixed.Members[3].CriticalK.Straggler < mixed.Members[0].CriticalK.Straggler);
        // By hand: squares 0.5, 12.5, 0.125 and 17.5.
        Assert.Equal("B", mixed.Cochran.Name);
        Assert.Equal(12.5 / 30.625, mixed.Cochran.Statistic, 1e-12);
    }

    // One degree of freedom against one: the share is arcsine distributed, P(share > x) = 1 − (2/π)·asin √x; against two: 1 − √x.
    // By hand.
    [Fact]
    public void FewestValuesHaveTheirLimitInClosedForm()
    {
        Assert.Equal(1 - (2 / Math.PI * Math.Asin(Math.Sqrt(0.9))), GroupConsistency.ShareProbability(0.9, 1, 1), 1e-12);
        Assert.Equal(0.1, GroupConsistency.ShareProbability(0.81, 1, 2), 1e-12);
        Assert.Equal(0.95 * Math.Sqrt(3), GroupConsistency.MandelKOfDegrees(1, 2, 0.05), 1e-12);
        Assert.Equal((1.0, 0.0), (GroupConsistency.ShareProbability(0, 3, 4), GroupConsistency.ShareProbability(1, 3, 4)));
        Assert.Throws<ArgumentOutOfRangeException>(() => GroupConsistency.ShareProbability(1.1, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GroupConsistency.ShareProbability(double.NaN, 1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => GroupConsistency.MandelKOfDegrees(0, 5, 0.05));
    }

    // Four standard errors. Bonferroni errs to the safe side only, and by little more than level²/2 where two shares rarely stand
    // out at once.
    [Theory]
    [InlineData(2, 4, 6)]
    [InlineData(3, 3, 3, 10)]
    [InlineData(1, 2, 2, 9, 1)]
    [InlineData(4, 4, 4, 4)]
    public void GroupsOfOneScatterGiveTheFalseAlarmsThatAreSaid(params int[] sizes)
    {
        int runs = Draws.Of(40_000);
        double slack = 4 * Math.Sqrt(0.05 * 0.95 / runs);
        var random = new RandomSource(5725);
        int alarms = 0;
        int[] passed = new int[sizes.Length];
        for (int run = 0; run < runs; run++)
        {
            GroupStanding found = GroupStanding.Of(
                [.. sizes.Select((n, g) =>
                    new GroupValues($"{g}", [.. Enumerable.Range(0, n).Select(_ => random.Normal())]))])!;
            alarms += found.Cochran.Probability <= GroupStanding.StragglerLevel ? 1 : 0;
            for (int g = 0; g < sizes.Length; g++)
            {
                passed[g] += found.Members[g].K > found.Members[g].CriticalK.Straggler ? 1 : 0;
            }
        }

        Assert.InRange((double)alarms / runs, 0.0484 - slack, 0.05 + slack);
        Assert.All(sizes.Zip(passed), g => Assert.Equal(g.First > 1 ? 0.05 : 0, (double)g.Second / runs, slack));
    }

    [Fact]
    public void NothingIsSaidOfTooLittle()
    {
        Assert.Null(GroupStanding.Of([new("A", [1, 2]), new("B", [2, 4])]));
        Assert.Null(GroupStanding.Of([new("A", [1, 2]), new("B", [2]), new("C", [3])]));
        Assert.Null(GroupStanding.Of([new("A", [1, 1]), new("B", [2, 2]), new("C", [3, 3])]));
        Assert.Null(GroupStanding.Of([new("A", [1, 3]), new("B", [2, 2]), new("C", [1, 3])]));
        Assert.Null(GroupStanding.Of([new("A", [1, 3]), new("B", [2, double.NaN]), new("C", [1, 4])]));
        Assert.NotNull(GroupStanding.Of([new("A", [1, 3]), new("B", [2, 2]), new("C", [1])]));
    }

    [Fact]
    public void OrderShiftAndScaleDoAsTheyShould()
    {
        GroupStanding found = GroupStanding.Of(Glucose("C"))!;
        GroupStanding turned = GroupStanding.Of([.. Glucose("C").AsEnumerable().Reverse()])!;
        GroupStanding moved = GroupStanding.Of(
            [.. Glucose("C").Select(g => new GroupValues(g.Name, [.. g.Values.Select(v => (-2 * v) + 7)]))])!;
        foreach (GroupMember member in found.Members)
        {
            GroupMember back = turned.Members.Single(m => m.Name == member.Name),
                scaled = moved.Members.Single(m => m.Name == member.Name);
            Assert.Equal(member.H, back.H, 0.00006);
            Assert.Equal(member.K, back.K, 0.00006);
            Assert.Equal(member.H, -scaled.H, 0.00006);
            Assert.Equal(member.K, scaled.K, 0.00006);
        }

        Assert.Equal(found.Cochran.Name, turned.Cochran.Name);
        Assert.Equal(2 * found.ReproducibilityDb, moved.ReproducibilityDb, 1e-9);
    }

    private static bool Close(ConsistencyLimits a, ConsistencyLimits b) =>
        Math.Abs(a.Straggler - b.Straggler) < 0.00006 && Math.Abs(a.Outlier - b.Outlier) < 0.00006;

    private static GroupValues[] Glucose(string material)
    {
        int column = 2 + (material[0] - 'A');
        return [.. Fixtures.Cells("published/e691-glucose/glucose.csv").GroupBy(r => r[0], r => Number(r[column]))
            .Select(g => new GroupValues(g.Key, [.. g]))];
    }

    private static GroupValues[] Creosote(string level) =>
        [.. Fixtures.Cells("published/iso-5725/b3-creosote-oil.csv").Where(r => r[0] == level)
            .GroupBy(r => r[1], r => Number(r[3]))
            .Select(g => new GroupValues(g.Key, [.. g]))];

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
