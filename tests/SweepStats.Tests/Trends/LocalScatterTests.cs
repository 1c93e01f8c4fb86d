using System.Globalization;
using SweepStats.Statistics;
using SweepStats.Trends;
using Xunit;

namespace SweepStats.Tests.Trends;

/// <summary>The error of a line by the scatter near each value, against R and by its laws.</summary>
public sealed class LocalScatterTests
{
    private static readonly string[][] Values = Fixtures.Cells("oracles/lack-of-fit-values.csv");

    [Fact]
    public void ErrorAndDegreesOfFreedomAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/local-scatter.csv");
        double[][] rows = Fixtures.Numbers("oracles/local-scatter.csv");
        Assert.Equal(18, rows.Length);
        for (int i = 0; i < rows.Length; i++)
        {
            Contribution told = At(Number(cells[i][0], 1), Number(cells[i][0], 2), rows[i][1]);
            Agreement.Relative(1e-9, rows[i][2], told.StandardUncertainty, rows[i]);
            Agreement.Relative(1e-9, rows[i][3], told.DegreesOfFreedom, rows[i]);
        }
    }

    [Fact]
    public void TwoSpecimensAtEachOfTwoValuesAreWorkedByHand()
    {
        // Two at each end: all leverages 1/2, all weights 1/4, residuals ±1: 4·(1/16)·1/(1/2) = 1/2. A = M/8 with
        // tr M = tr M² = 2, so that (tr A)²/tr A² = 2: one degree of freedom for each end.
        Contribution told = At([0, 0, 1, 1], [1, -1, 3, 1], 0.5);
        Assert.Equal(Math.Sqrt(0.5), told.StandardUncertainty, 1e-12);
        Assert.Equal(2, told.DegreesOfFreedom, 1e-12);
    }

    [Fact]
    public void ShiftScaleAndOrderDoNotMatter()
    {
        double[] x = Number("uneven", 1), y = Number("uneven", 2);
        Contribution told = At(x, y, 7), moved = At([.. x.Select(v => (100 * v) + 3)], [.. y.Select(v => 9 - (2 * v))], 703);
        Contribution turned = At([.. x.Reverse()], [.. y.Reverse()], 7);
        Agreement.Relative(1e-9, 2 * told.StandardUncertainty, moved.StandardUncertainty);
        Agreement.Relative(1e-9, told.DegreesOfFreedom, moved.DegreesOfFreedom);
        Agreement.Relative(1e-9, told.StandardUncertainty, turned.StandardUncertainty);
        Agreement.Relative(1e-9, told.DegreesOfFreedom, turned.DegreesOfFreedom);
    }

    private static Contribution At(double[] x, double[] y, double value)
    {
        var line = RegressionLine.Of(x, y);
        return new LocalScatter(x).ErrorAt([.. y.Zip(x, (v, at) => v - line.At(at))], value);
    }

    private static double[] Number(string name, int column) =>
        [.. Values.Where(r => r[0] == name).Select(r => double.Parse(r[column], CultureInfo.InvariantCulture))];
}
