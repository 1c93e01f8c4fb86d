using System.Globalization;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class NestedRemlTests
{
    // lme4 and nlme, fixtures/published/nested: to the digits printed there.
    [Theory]
    [InlineData("dyestuff", 0)]
    [InlineData("dyestuff2", 0)]
    [InlineData("pastes", 1)]
    [InlineData("rail", 0)]
    public void PublishedSetsComeOutToSixDigits(string set, int inner)
    {
        string[] printed = Fixtures.Cells("published/nested/certified.csv").Single(r => r[0] == set);
        (double[] values, Nesting nesting) = Published(set);
        NestedComponents fit = NestedReml.Of(values, nesting);
        Agrees(printed[1], Math.Sqrt(fit.Variances[0]));
        Agrees(printed[2], Math.Sqrt(fit.Variances[inner]));
        Agrees(printed[3], Math.Sqrt(fit.Residual));
        Agrees(printed[4], fit.Mean);
        Agrees(printed[5], fit.StandardError);
        Agrees(printed[6], NestedReml.Criterion(values, nesting, fit));
    }

    // R, nlme (fixtures/oracles/nested.R): three levels, unbalanced; in the first set one variance is 0.
    [Theory]
    [InlineData("curtain")]
    [InlineData("wide")]
    public void UnbalancedSetsAgreeWithReference(string set)
    {
        double[] expected = Fixtures.Numbers(
            "oracles/nested-fits.csv")[Array.FindIndex(Fixtures.Cells("oracles/nested-fits.csv"), r => r[0] == set)];
        (double[] values, Nesting nesting) = Drawn(set);
        NestedComponents fit = NestedReml.Of(values, nesting);
        for (int level = 0; level < 3; level++)
        {
            Assert.Equal(expected[level + 1], fit.Variances[level], 2e-6 * fit.Total);
        }

        Assert.Equal(expected[4], fit.Residual, 1e-6 * fit.Residual);
        Assert.Equal(expected[5], fit.Mean, 1e-6);
        Assert.Equal(expected[6], fit.StandardError, 1e-6);
        Assert.Equal(expected[7], NestedReml.Criterion(values, nesting, fit), 1e-7);
    }

    [Fact]
    public void BalancedSetsGiveTheMeanSquaresAnswer()
    {
        // Where no estimate is negative, restricted likelihood and mean squares agree in balanced sets.
        (double[] values, Nesting nesting) = Published("pastes");
        NestedComponents fit = NestedReml.Of(values, nesting), squares = NestedAnova.Of(values, nesting);
        Assert.Equal(squares.Variances[0], fit.Variances[0], 1e-7);
        Assert.Equal(squares.Variances[1], fit.Variances[1], 1e-7);
        Assert.Equal(squares.Residual, fit.Residual, 1e-8);
        Assert.Equal(squares.StandardError, fit.StandardError, 1e-8);
    }

    [Fact]
    public void NoNeighbourIsMoreLikely()
    {
        (double[] values, Nesting nesting) = Drawn("wide");
        NestedComponents fit = NestedReml.Of(values, nesting);
        double at = NestedReml.Criterion(values, nesting, fit);
        foreach ((int level, double share) in new[] { (0, 1.01), (0, 0.99), (1, 1.01), (1, 0.99), (2, 1.01), (2, 0.99) })
        {
            NestedComponents near = fit with { Variances = fit.Variances.SetItem(level, fit.Variances[level] * share) };
            Assert.True(NestedReml.Criterion(values, nesting, near) > at);
        }
    }

    [Fact]
    public void ShiftScaleAndOrderDoAsTheyShould()
    {
        (double[] values, Nesting nesting) = Drawn("curtain");
        string[][] rows = Rows("curtain");
        NestedComponents fit = NestedReml.Of(values, nesting);
        NestedComponents moved = NestedReml.Of([.. values.Select(v => (3 * v) - 200)], nesting);
        NestedComponents turned = NestedReml.Of([.. values.Reverse()], Grouped([.. rows.Reverse()]));
        Assert.Equal((3 * fit.Mean) - 200, moved.Mean, 1e-7);
        for (int level = 0; level < 3; level++)
        {
            Assert.Equal(9 * fit.Variances[level], moved.Variances[level], 1e-5);
            Assert.Equal(fit.Variances[level], turned.Variances[level], 1e-6);
        }
    }

    [Fact]
    public void ComponentsByMeanSquaresComeOutAsByHand()
    {
        // Lots {1, 3 | 5, 7} and {11, 13}: placements' means 2, 6, 12; squares 6 within on 3 degrees, (2−4)²·2+(6−4)²·2 = 16
        // between placements of a lot on 1, lot means 4 and 12 about 20/3: 4·(8/3)² + 2·(16/3)² = 85⅓. Within 2; placements (16 −
        // 2)/2 = 7; lots (85⅓ − 2 − 7·(4/4+4/4+4/2 − 12/6))/(6 − 20/6) = (85⅓ − 16)/(8/3) = 26 − 0 with weights 2·(2²/4)+2²/2 = 4
        // less 12/6 = 2.
        NestedComponents parts = NestedAnova.Of([1, 3, 5, 7, 11, 13], Nesting.Of([0, 0, 0, 0, 1, 1], [0, 0, 1, 1, 0, 0]));
        Assert.Equal(2, parts.Residual, 1e-12);
        Assert.Equal(7, parts.Variances[1], 1e-12);
        Assert.Equal(((256.0 / 3) - 2 - (7 * 2)) / (8.0 / 3), parts.Variances[0], 1e-12);
    }

    [Fact]
    public void WithoutScatterWithinGroupsMeanSquaresStand()
    {
        NestedComponents parts = NestedReml.Of([1, 1, 3, 3], Nesting.Of([0, 0, 1, 1]));
        Assert.Equal(0, parts.Residual);
        Assert.Equal(2, parts.Variances[0], 1e-12);
        Assert.Equal(2, parts.Mean, 1e-9);
        Assert.Equal(1, parts.StandardError, 1e-9);
    }

    [Fact]
    public void GroupsThatTellNothingApartAreRefused()
    {
        Assert.Throws<ArgumentException>(() => NestedReml.Of([1, 2, 3], Nesting.Of([0, 1, 2])));
        Assert.Throws<ArgumentException>(() => NestedReml.Of([1, 2, 3], Nesting.Of([0, 0, 0])));
        Assert.Throws<ArgumentException>(() => NestedReml.Of([1, 2, 3], Nesting.Of([0, 0, 1], [0, 0, 0])));
        Assert.Throws<ArgumentException>(() => NestedReml.Of([1, 2], Nesting.Of([0, 0, 1])));
        Assert.Throws<ArgumentException>(() => Nesting.Of([0, 0], [0]));
    }

    private static void Agrees(string printed, double value)
    {
        if (printed.Length > 0)
        {
            int decimals = printed.Contains('.', StringComparison.Ordinal)
                ? printed.Length - printed.IndexOf('.', StringComparison.Ordinal) - 1 : 0;
            Assert.Equal(double.Parse(printed, CultureInfo.InvariantCulture), value, (0.5 * Math.Pow(10, -decimals)) + 1e-9);
        }
    }

    private static (double[] Values, Nesting Nesting) Published(string set)
    {
        string[][] rows = Fixtures.Cells($"published/nested/{set}.csv");
        return set switch
        {
            "pastes" => (Numbers(rows, 0), Nesting.Of(Labels(rows, 1), Labels(rows, 3))),
            _ => (Numbers(rows, 1), Nesting.Of(Labels(rows, 0))),
        };
    }

    private static (double[] Values, Nesting Nesting) Drawn(string set) => (Numbers(Rows(set), 1), Grouped(Rows(set)));

    private static string[][] Rows(string set) => [.. Fixtures.Cells("oracles/nested-values.csv").Where(r => r[0] == set)];

    private static Nesting Grouped(string[][] rows) => Nesting.Of(Labels(rows, 2), Labels(rows, 3), Labels(rows, 4));

    private static double[] Numbers(string[][] rows, int column) =>
        [.. rows.Select(r => double.Parse(r[column], CultureInfo.InvariantCulture))];

    private static int[] Labels(string[][] rows, int column)
    {
        string[] names = [.. rows.Select(r => r[column]).Distinct()];
        return [.. rows.Select(r => Array.IndexOf(names, r[column]))];
    }
}
