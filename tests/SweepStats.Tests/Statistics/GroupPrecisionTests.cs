using System.Globalization;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class GroupPrecisionTests
{
    // ISO 5725-2:1994, B.1 sulfur in coal: m, s_r, s_R as printed (from memory; recomputed they round to the print).
    [Theory]
    [InlineData("1", 0.690, 0.015, 0.026)]
    [InlineData("2", 1.252, 0.029, 0.061)]
    [InlineData("3", 1.667, 0.017, 0.035)]
    [InlineData("4", 3.250, 0.026, 0.058)]
    public void SulfurInCoalComesOutAsPrinted(string level, double mean, double repeatability, double reproducibility)
    {
        GroupPrecision found = Iso("b1-sulfur-in-coal.csv", level, _ => true);
        Assert.Equal(mean, found.Mean, 0.0005 + 1e-9);
        Assert.Equal(repeatability, found.Repeatability, 0.0005);
        Assert.Equal(reproducibility, found.Reproducibility, 0.0005);
    }

    // B.3 creosote oil without laboratory 1, and without laboratory 6 at level 5 (from memory).
    [Theory]
    [InlineData("1", 3.94, 0.092, 0.171)]
    [InlineData("2", 8.28, 0.179, 0.498)]
    [InlineData("3", 14.18, 0.127, 0.400)]
    [InlineData("4", 15.59, 0.337, 0.579)]
    [InlineData("5", 20.41, 0.393, 0.637)]
    public void CreosoteOilComesOutAsPrinted(string level, double mean, double repeatability, double reproducibility)
    {
        GroupPrecision found = Iso("b3-creosote-oil.csv", level, lab => lab != "1" && !(level == "5" && lab == "6"));
        Assert.Equal(mean, found.Mean, 0.005);
        Assert.Equal(repeatability, found.Repeatability, 0.0006);
        Assert.Equal(reproducibility, found.Reproducibility, 0.0006);
    }

    // ASTM E691, glucose in serum: h and k of laboratories A to H, recomputed; s_r as printed (from memory). Material C with
    // 138.30, which the print used.
    [Fact]
    public void GlucoseGivesThePublishedHAndK()
    {
        double[][] h =
        [
            [-0.39, -0.13, -0.11, -0.10, -0.09, 0.83, -1.75, 1.75], [-1.36, -0.45, 0.22, 1.85, -0.99, 0.21, -0.16, 0.67],
            [-0.88, 0.39, -0.08, 1.59, -0.84, 1.09, -1.28, 0.01], [-0.41, 0.15, -1.01, 0.96, -0.64, 0.97, -1.33, 1.31],
            [-0.46, 1.64, -0.68, 0.49, -0.34, 0.17, -1.62, 0.79],
        ];
        double[][] k =
        [
            [0.21, 0.46, 1.00, 1.70, 0.34, 1.32, 1.17, 0.77], [0.11, 0.89, 0.56, 1.85, 0.52, 1.09, 1.38, 0.34],
            [0.38, 1.40, 1.12, 1.02, 0.78, 0.83, 1.38, 0.63], [0.02, 1.78, 0.61, 0.74, 0.72, 0.63, 1.45, 0.94],
            [0.18, 2.33, 0.69, 0.22, 0.24, 1.03, 0.84, 0.42],
        ];
        double[] repeatability = [1.0632, 1.4949, 1.5434, 2.6251, 3.9350];
        string[][] rows = Fixtures.Cells("published/e691-glucose/glucose.csv");
        for (int material = 0; material < 5; material++)
        {
            double[] values = [.. rows.Select(r => Number(r[material + 2]))];
            if (material == 2)
            {
                values[Array.IndexOf(values, 148.3)] = 138.3;
            }

            GroupPrecision found = GroupPrecision.Of(values, [.. rows.Select(r => r[0][0] - 'A')]);
            Assert.Equal(repeatability[material], found.Repeatability, 0.00006);
            for (int lab = 0; lab < 8; lab++)
            {
                Assert.Equal(h[material][lab], found.H[lab], 0.0051);
                Assert.Equal(k[material][lab], found.K[lab], 0.0051);
            }
        }
    }

    [Fact]
    public void GearsHaveThePublishedCochran()
    {
        // NIST gear data: C = 0.27713 for batch 6.
        string[][] rows = Fixtures.Cells("published/nist-gear/gear.csv");
        GroupPrecision found = GroupPrecision.Of([.. rows.Select(r => Number(r[1]))],
            [.. rows.Select(r => int.Parse(r[0], CultureInfo.InvariantCulture) - 1)]);
        Assert.Equal(0.27713, found.Cochran, 5e-6);
        Assert.Equal(5, found.MostScattered);
    }

    [Fact]
    public void ShiftAndScaleDoAsTheyShould()
    {
        double[] values = [1, 2, 4, 7, 8, 12];
        int[] groups = [0, 0, 1, 1, 2, 2];
        GroupPrecision found = GroupPrecision.Of(values, groups),
            moved = GroupPrecision.Of([.. values.Select(v => (3 * v) - 50)], groups);
        Assert.Equal(3 * found.Reproducibility, moved.Reproducibility, 1e-9);
        Assert.Equal(found.H[2], moved.H[2], 1e-9);
        Assert.Equal(found.Cochran, moved.Cochran, 1e-9);
    }

    private static GroupPrecision Iso(string file, string level, Func<string, bool> lab)
    {
        string[][] rows = [.. Fixtures.Cells("published/iso-5725/" + file).Where(r => r[0] == level && lab(r[1]))];
        string[] labs = [.. rows.Select(r => r[1]).Distinct()];
        return GroupPrecision.Of([.. rows.Select(r => Number(r[3]))], [.. rows.Select(r => Array.IndexOf(labs, r[1]))]);
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
