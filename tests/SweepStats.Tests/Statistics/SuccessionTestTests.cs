using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class SuccessionTestTests
{
    [Fact]
    public void TheRatioOfThreeValuesAsByHand()
    {
        // 1, 2, 4: differences 1 and 2 square to 5, distances from 7/3 to 14/3; 1 − 5/(2·14/3) = 13/28.
        SerialRows rows = Column(1, 2, 4);
        Assert.Equal(13.0 / 28, SuccessionRatio.Of(rows, 1).Value, 1e-14);
        Assert.Equal(13.0 / 28, new RowOrder(rows, 1).Ratio(), 1e-14);
        Assert.Equal(7.0 / 3, rows.Variance, 1e-14);
    }

    [Fact]
    public void MomentsOfFiveIndependentValuesAsVonNeumannHasThem() =>
        // Var(d) = 4(n − 2)/(n² − 1) of the mean square difference over the variance on n degrees of freedom; d = 2 − 2T.
        Assert.Equal((5.0 - 2) / (25 - 1), SuccessionRatio.Of(Column(1, 5, 2, 4, 3), 1).Second, 1e-15);

    [Fact]
    public void TailsFromR()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/persistence-tail.csv"))
        {
            SuccessionRatio moments = SuccessionRatio.Of(Rows((int)row[0], 1, 1), row[1]);
            double found = SuccessionTest.UpperTail(row[2], [moments], [1]);
            if (row[0] < 5 && row[1] == 1)
            {
                // Of four values the ratio cannot pass 0.71, which moments do not know: the chance found is up to four times too
                // large.
                Assert.InRange(found / row[3], 0.85, 4.5);
            }
            else
            {
                Agreement.Relative(row[1] == 1 && row[0] < 10 ? 0.085 : 0.005, row[3], found, row);
            }
        }
    }

    [Fact]
    public void BackwardsShiftedOrScaledTheRatioIsTheSame()
    {
        double[][] rows = [[1, 4], [3, 2], [6, 2.5], [5, 1], [2, 0]];
        double ratio = SuccessionRatio.Of(new SerialRows(rows), 2).Value;
        Assert.Equal(ratio, SuccessionRatio.Of(new SerialRows([.. rows.Reverse()]), 2).Value, 1e-12);
        Assert.Equal(ratio,
            SuccessionRatio.Of(new SerialRows([.. rows.Select(r => r.Select((x, f) => x + (10 * f) + 3).ToArray())]), 2).Value,
            1e-12);
        Assert.Equal(ratio, SuccessionRatio.Of(new SerialRows([.. rows.Select(r => r.Select(x => -4 * x).ToArray())]), 2).Value,
            1e-12);
    }

    [Fact]
    public void TheOrderOfGroupsDoesNotMatter()
    {
        SerialRows[] groups = [Rows(5, 30, 2), Rows(4, 30, 3), Rows(3, 20, 4)];
        Assert.Equal(SuccessionTest.Of(groups)!.Value.Probability, SuccessionTest.Of([.. groups.Reverse()])!.Value.Probability,
            1e-9);
    }

    [Fact]
    public void TwoRowsOrNoScatterSayNothing()
    {
        Assert.Null(SuccessionTest.Of([]));
        Assert.Null(SuccessionTest.Of([Column(1, 2)]));
        Assert.Null(SuccessionTest.Of([Column(3, 3, 3, 3)]));
    }

    [Theory]
    [InlineData(3, 40)]
    [InlineData(5, 40)]
    [InlineData(5, 1)]
    [InlineData(8, 40)]
    [InlineData(8, 1)]
    public void IndependentRowsAreSeldomFoundAlike(int count, int columns)
    {
        int draws = Draws.Of(1500), below = 0;
        for (int i = 0; i < draws; i++)
        {
            below += SuccessionTest.Of([Rows(count, columns, 10 + (2 * i)),
                Rows(count, columns, 11 + (2 * i))])!.Value.Probability < 0.02 ? 1 : 0;
        }

        // Columns counted too low make it fewer.
        Assert.NotEqual(0, below);
        Often.AtMost(below, draws, 0.02, whenFull: 46);
    }

    [Theory]
    [InlineData(5, 60, 0.5)]
    [InlineData(10, 60, 0.3)]
    public void RowsThatLastAreFound(int count, int columns, double correlation)
    {
        int found = Enumerable.Range(1, Draws.Of(100)).Count(i =>
            SuccessionTest.Of([Rows(count, columns, 2 * i, correlation),
            Rows(count, columns, (2 * i) + 1, correlation)])!.Value.Probability < 0.001);
        Often.AtLeast(found, Draws.Of(100), 0.95, whenFull: 95);
    }

    [Fact]
    public void OneColumnThatClimbsInTwentyRowsIsFoundByReshuffling()
    {
        Assert.InRange(SuccessionTest.Of([Column([.. Enumerable.Range(0, 20).Select(i => (double)i)])])!.Value.Probability, 0,
            1e-4);
        // To and fro is the very opposite.
        Assert.InRange(SuccessionTest.Of([Column([.. Enumerable.Range(0, 20).Select(i => (double)(i % 2))])])!.Value.Probability,
            0.9, 1);
    }

    private static SerialRows Column(params double[] values) => new([.. values.Select(v => new[] { v })]);

    internal static SerialRows Rows(int count, int columns, int seed, double correlation = 0)
    {
        var random = new RandomSource((ulong)seed);
        var rows = new double[count][];
        for (int j = 0; j < count; j++)
        {
            rows[j] = [.. Enumerable.Range(0, columns)
                .Select(f => j == 0 ? random.Normal() : (correlation * rows[j - 1][f])
                + (Math.Sqrt(1 - (correlation * correlation)) * random.Normal()))];
        }

        return new SerialRows(rows);
    }
}
