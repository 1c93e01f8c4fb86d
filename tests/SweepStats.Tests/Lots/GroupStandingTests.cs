using System.Globalization;
using SweepStats.Lots;
using Xunit;

namespace SweepStats.Tests.Lots;

public sealed class GroupStandingTests
{
    // ASTM E691, glucose in serum, material E: h and k of laboratories A to H (recomputed, GroupPrecisionTests). Critical values for eight laboratories of three
    // repeats: fixtures/published/iso-5725.
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
        Assert.Equal((cochran[3], cochran[2]), (found.Cochran.Straggler, found.Cochran.Outlier), Close);
        Assert.Equal((cochran[6], cochran[5]), found.CriticalK, Close);
        Assert.Equal((grubbs[7], grubbs[6]), found.CriticalH, Close);
    }

    // ISO 5725-2:1994, B.3 leaves laboratory 1 out, which is outermost everywhere and past Grubbs' 1 % at levels 3 and 4, and laboratory 6 at level 5 (from memory).
    [Fact]
    public void CreosoteOilHasTheOutliersThatWereLeftOut()
    {
        Dictionary<string, GroupStanding> levels = Enumerable.Range(1, 5).Select(l => $"{l}").ToDictionary(l => l, l => GroupStanding.Of(Creosote(l))!);
        Assert.All(levels.Values, found => Assert.Equal("1", found.Grubbs.Name));
        Assert.Equal(["3", "4"], levels.Where(l => l.Value.Grubbs.Probability < GroupStanding.OutlierLevel).Select(l => l.Key));
        GroupStanding fifth = levels["5"];
        Assert.Equal("6", fifth.Cochran.Name);
        Assert.Equal(["6"], fifth.Members.Where(m => m.K > fifth.CriticalK.Outlier).Select(m => m.Name));
    }

    // Grubbs' G of the means is the largest |h|, and its probability falls to the level where G reaches the table's value.
    [Fact]
    public void GrubbsIsOfTheOutermostMean()
    {
        GroupStanding found = GroupStanding.Of(Glucose("B"))!;
        Assert.Equal("D", found.Grubbs.Name);
        Assert.Equal(found.Members.Max(m => Math.Abs(m.H)), found.Grubbs.Statistic, 1e-9);
        Assert.True(found.Grubbs.Statistic < 2.1266 && found.Grubbs.Probability > 0.05);
        GroupStanding off = GroupStanding.Of([.. Glucose("B").Select(g => g.Name == "D" ? (g.Name, [.. g.Values.Select(v => v + 20)]) : g)])!;
        Assert.True(off.Grubbs.Statistic > 2.2744 && off.Grubbs.Probability < 0.01);
    }

    [Fact]
    public void CriticalValuesAreOfTheMeanNumberOfRepeats()
    {
        // Three groups with two values and one with six make three on average; the one of a single value scatters not and counts not for k.
        GroupStanding mixed = GroupStanding.Of([("A", [1, 2]), ("B", [2, 4]), ("C", [3, 3.5]), ("D", [1, 2, 3, 4, 5, 6]), ("E", [3])])!;
        double[] table = Fixtures.Numbers("published/iso-5725/cochran-and-k.csv").Single(r => r[0] == 4 && r[1] == 3);
        Assert.Equal((table[6], table[5]), mixed.CriticalK, Close);
        Assert.Equal((table[3], table[2]), (mixed.Cochran.Straggler, mixed.Cochran.Outlier), Close);
        Assert.True(double.IsNaN(mixed.Members[4].K));
        Assert.Equal([2, 2, 2, 6, 1], mixed.Members.Select(m => m.Count));
    }

    [Fact]
    public void NothingIsSaidOfTooLittle()
    {
        Assert.Null(GroupStanding.Of([("A", [1, 2]), ("B", [2, 4])]));
        Assert.Null(GroupStanding.Of([("A", [1, 2]), ("B", [2]), ("C", [3])]));
        Assert.Null(GroupStanding.Of([("A", [1, 1]), ("B", [2, 2]), ("C", [3, 3])]));
        Assert.Null(GroupStanding.Of([("A", [1, 3]), ("B", [2, 2]), ("C", [1, 3])]));
        Assert.Null(GroupStanding.Of([("A", [1, 3]), ("B", [2, double.NaN]), ("C", [1, 4])]));
        Assert.NotNull(GroupStanding.Of([("A", [1, 3]), ("B", [2, 2]), ("C", [1])]));
    }

    [Fact]
    public void OrderShiftAndScaleDoAsTheyShould()
    {
        GroupStanding found = GroupStanding.Of(Glucose("C"))!;
        GroupStanding turned = GroupStanding.Of([.. Glucose("C").AsEnumerable().Reverse()])!;
        GroupStanding moved = GroupStanding.Of([.. Glucose("C").Select(g => (g.Name, g.Values.Select(v => (-2 * v) + 7).ToArray()))])!;
        foreach (GroupMember member in found.Members)
        {
            GroupMember back = turned.Members.Single(m => m.Name == member.Name), scaled = moved.Members.Single(m => m.Name == member.Name);
            Assert.Equal((member.H, member.K), (back.H, back.K), Close);
            Assert.Equal((member.H, member.K), (-scaled.H, scaled.K), Close);
        }

        Assert.Equal(found.Cochran.Name, turned.Cochran.Name);
        Assert.Equal(2 * found.ReproducibilityDb, moved.ReproducibilityDb, 1e-9);
    }

    private static bool Close((double, double) a, (double, double) b) => Math.Abs(a.Item1 - b.Item1) < 0.00006 && Math.Abs(a.Item2 - b.Item2) < 0.00006;

    private static (string Name, double[] Values)[] Glucose(string material)
    {
        int column = 2 + (material[0] - 'A');
        return [.. Fixtures.Cells("published/e691-glucose/glucose.csv").GroupBy(r => r[0], r => Number(r[column])).Select(g => (g.Key, g.ToArray()))];
    }

    private static (string Name, double[] Values)[] Creosote(string level) =>
        [.. Fixtures.Cells("published/iso-5725/b3-creosote-oil.csv").Where(r => r[0] == level).GroupBy(r => r[1], r => Number(r[3])).Select(g => (g.Key, g.ToArray()))];

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
