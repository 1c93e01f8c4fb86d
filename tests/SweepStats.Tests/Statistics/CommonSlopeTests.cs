using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CommonSlopeTests
{
    [Fact]
    public void TwoGroupsGiveWhatHandArithmeticGives()
    {
        // Groups (0, 1), (1, 2), (2, 6) and (10, 0), (11, 1): ΣΣdx·dy = 5 + 0.5, ΣΣdx² = 2 + 0.5, slope 2.2.
        // Residuals dy − 2.2·dx: 0.2, −1, 0.8, 0.6, −0.6: squares 2.4 on 5 − 2 − 1 = 2 degrees of freedom, u² = 1.2/2.5.
        SlopeEstimate slope = CommonSlope.Of([new([0, 1, 2], [1, 2, 6]), new([10, 11], [0, 1])])!.Value;
        Assert.Equal(2.2, slope.Value, 1e-15);
        Assert.Equal(Math.Sqrt(0.48), slope.Uncertainty, 1e-15);
        Assert.Equal(2, slope.DegreesOfFreedom);
    }

    [Fact]
    public void PublishedSeriesTogetherAgreeWithR()
    {
        string[][] cells = Fixtures.Cells("oracles/trend-common.csv");
        double[][] rows = Fixtures.Numbers("oracles/trend-common.csv");
        Assert.NotEmpty(rows);
        for (int i = 0; i < rows.Length; i++)
        {
            SlopeEstimate slope = CommonSlope.Of([.. cells[i][0].Split(' ').Select(MannKendallTests.Case)])!.Value;
            Interval interval = slope.Interval(new Confidence(0.99));
            double[][] pairs = [[rows[i][1], slope.Value], [rows[i][2], slope.Uncertainty], [rows[i][3], slope.DegreesOfFreedom],
                [rows[i][5], interval.Low], [rows[i][6], interval.High]];
            Assert.All(pairs, pair => Agreement.Relative(1e-10, pair[0], pair[1], i));
            Agreement.Relative(1e-9, rows[i][4], slope.Probability, i);
        }
    }

    [Fact]
    public void OneGroupIsThePlainLine()
    {
        (double[] x, double[] y) = MannKendallTests.Case("sulfate");
        SlopeEstimate alone = CommonSlope.Of([new(x, y)])!.Value;
        SlopeEstimate line = RegressionLine.Of(x, y).Slope;
        Agreement.Relative(1e-13, line.Value, alone.Value);
        Agreement.Relative(1e-13, line.Uncertainty, alone.Uncertainty);
        Assert.Equal(line.DegreesOfFreedom, alone.DegreesOfFreedom);
    }

    [Fact]
    public void ShiftsOfAGroupItsOrderAndScaleActAsOnASlope()
    {
        PairGroup a = MannKendallTests.Case("sulfate");
        PairGroup b = MannKendallTests.Case("sodium");
        SlopeEstimate plain = CommonSlope.Of([a, b])!.Value;
        Near(plain, CommonSlope.Of([b, a])!.Value, 1);
        Near(plain, CommonSlope.Of([new([.. a.X.Reverse()], [.. a.Y.Reverse()]), b])!.Value, 1);
        Near(plain, CommonSlope.Of([new([.. a.X.Select(x => x + 70)], [.. a.Y.Select(y => y - 300)]), b])!.Value, 1);
        Near(plain, CommonSlope.Of([new(a.X, [.. a.Y.Select(y => y * -4)]), new(b.X, [.. b.Y.Select(y => y * -4)])])!.Value, -4);
    }

    [Fact]
    public void WhereNoSlopeCanBeToldThereIsNone()
    {
        Assert.Null(CommonSlope.Of([new([1, 1, 1], [1, 2, 3])]));
        Assert.Null(CommonSlope.Of([new([1, 2], [1, 2])]));
        Assert.Null(CommonSlope.Of([]));
        Assert.Throws<ArgumentException>(() => CommonSlope.Of([new([1, 2, 3], [1, 2])]));
        Assert.Throws<ArgumentException>(() => CommonSlope.Of([new([1, 2, 3], [1, 2, double.NaN])]));
    }

    private static void Near(SlopeEstimate plain, SlopeEstimate other, double factor)
    {
        Agreement.Relative(1e-10, plain.Value * factor, other.Value);
        Agreement.Relative(1e-10, plain.Uncertainty * Math.Abs(factor), other.Uncertainty);
    }
}
