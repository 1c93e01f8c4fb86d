using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class LackOfFitTests
{
    private static readonly string[][] Values = Fixtures.Cells("oracles/lack-of-fit-values.csv");

    [Fact]
    public void ThreePairsOfRepeatsGiveWhatHandArithmeticGives()
    {
        // Means 1, 5, 3 about the line 2, 3, 4: lack of fit 2·(1 + 4 + 1) = 12 on 1, pure error 3·2 = 6 on 3 degrees of freedom,
        // F = 6.
        var fit = LackOfFit.Of([0, 0, 1, 1, 2, 2], [0, 2, 4, 6, 2, 4]);
        // t = √6 of 3 degrees of freedom in closed form: with z = t/√3, the two tails are 1 − (2/π)(atan z + z/(1 + z²)).
        double z = Math.Sqrt(2);
        Assert.Equal(1 - (2 / Math.PI * (Math.Atan(z) + (z / 3))), fit.ByRepeats!.Value, 1e-12);
        Assert.Null(fit.ByBend);
        Assert.Equal(fit.ByRepeats, fit.Probability);
        Assert.Equal(Math.Sqrt(2), fit.PureError!.Value, 1e-14);
        Assert.Equal(3, fit.PureDegrees);
    }

    [Fact]
    public void ProbabilitiesAgreeWithR()
    {
        foreach ((string[] row, double[] told) in Fixtures.Cells("oracles/lack-of-fit-tests.csv")
            .Zip(Fixtures.Numbers("oracles/lack-of-fit-tests.csv")))
        {
            (double[] x, double[] y, string[] lots) = Case(row[0]);
            var fit = LackOfFit.Of(x, y);
            Agree(told[1], fit.ByRepeats);
            Agree(told[2], fit.ByBend);
            Agree(told[4], fit.PureError);
            if (!double.IsNaN(told[3]))
            {
                Agree(told[3], GroupsAboutLine.Probability([.. Enumerable.Range(0, x.Length).GroupBy(i => lots[i])
                    .Select(g => new PairGroup([.. g.Select(i => x[i])], [.. g.Select(i => y[i])]))]));
            }
        }
    }

    [Fact]
    public void TheLineAndItsErrorAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/lack-of-fit-lines.csv");
        double[][] rows = Fixtures.Numbers("oracles/lack-of-fit-lines.csv");
        for (int i = 0; i < rows.Length; i++)
        {
            double[] row = rows[i];
            (double[] x, double[] y, _) = Case(cells[i][0]);
            var line = RegressionLine.Of(x, y);
            Contribution error = line.ErrorAt(row[1]);
            double half = StudentT.Quantile(0.95, error.DegreesOfFreedom) * error.StandardUncertainty;
            Agreement.Relative(1e-11, row[2], line.At(row[1]), row);
            Agreement.Relative(1e-11, row[3], error.StandardUncertainty, row);
            Assert.Equal(row[4], error.DegreesOfFreedom);
            Agreement.Relative(1e-10, row[5], line.At(row[1]) - half, row);
            Agreement.Relative(1e-10, row[6], line.At(row[1]) + half, row);
        }
    }

    [Fact]
    public void NeitherShiftNorScaleNorOrderChangesAProbability()
    {
        (double[] x, double[] y, _) = Case("uneven");
        double told = LackOfFit.Of(x, y).Probability!.Value;
        Agreement.Relative(1e-9, told,
            LackOfFit.Of([.. x.Select(v => (1000 * v) - 3)], [.. y.Select(v => 7 - (2 * v))]).Probability!.Value);
        Agreement.Relative(1e-9, told, LackOfFit.Of([.. x.Reverse()], [.. y.Reverse()]).Probability!.Value);
    }

    [Fact]
    public void AnExactLineIsNotRefusedForItsRounding()
    {
        double[] x = [0, 0, 0.1, 0.1, 0.7, 0.7, 1.3, 1.3];
        Assert.Equal(1, LackOfFit.Of(x, [.. x.Select(v => 45.3 - (0.2 * v))]).Probability);
    }

    [Fact]
    public void AStraightLineIsRefusedAsOftenAsItMayBe()
    {
        var random = new RandomSource(7);
        double[] x = [0, 0, 0, 5, 5, 10, 10, 10, 20, 30];
        int refused = 0;
        const int Lines = 4000;
        for (int i = 0; i < Lines; i++)
        {
            refused += LackOfFit.Of(x, [.. x.Select(v => 45 - (0.2 * v) + random.Normal())]).Probability <= 0.05 ? 1 : 0;
        }

        // Bonferroni of two tests that go together promises 5 % at most; three binomial deviations are 1 %.
        Assert.InRange(refused / (double)Lines, 0.025, 0.06);
    }

    private static (double[] X, double[] Y, string[] Lots) Case(string name)
    {
        string[][] rows = [.. Values.Where(v => v[0] == name)];
        return ([.. rows.Select(r => Number(r[1]))], [.. rows.Select(r => Number(r[2]))], [.. rows.Select(r => r[3])]);
    }

    private static double Number(string cell) =>
        double.TryParse(cell, System.Globalization.CultureInfo.InvariantCulture, out double value) ? value : double.NaN;

    private static void Agree(double expected, double? actual)
    {
        Assert.Equal(double.IsNaN(expected), actual is null);
        if (actual is { } found)
        {
            Agreement.Relative(1e-9, expected, found);
        }
    }
}
