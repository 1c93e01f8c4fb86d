using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class SerialCovarianceTests
{
    [Fact]
    public void ThreeValuesOfCorrelationAHalfAsByHand()
    {
        // Var(mean) = (3 + 2(2·½ + ¼))/9; E s² = 3/2·(1 − that). Distances from the mean vary along (−1, 0, 1)/√2 by 1 − ¼ and
        // along (1, −2, 1)/√6 by (6 − 4 + ½)/6.
        SerialCovariance three = new SerialModel(0.5, 1).Of(3);
        Assert.Equal(5.5 / 9, three.VarianceOfMean, 1e-15);
        Assert.Equal(1.5 * 3.5 / 9, three.SampleVariance, 1e-15);
        Assert.Equal(9 / 5.5, three.Worth, 1e-14);
        double slow = 0.75, quick = 2.5 / 6;
        Assert.Equal((slow + quick) * (slow + quick) / ((slow * slow) + (quick * quick)), three.DegreesOfFreedom(), 1e-13);
        double[] modes = new SerialModel(0.5, 1).ModeVariances(CosineModes.Weights(3));
        Assert.Equal(slow, modes[0], 1e-15);
        Assert.Equal(quick, modes[1], 1e-15);
    }

    [Fact]
    public void TableFromR()
    {
        foreach (double[] row in Fixtures.Numbers("oracles/persistence-worth.csv"))
        {
            int n = (int)row[0];
            var model = new SerialModel(row[1], row[2]);
            SerialCovariance values = model.Of(n);
            Agreement.Relative(1e-12, row[3], values.VarianceOfMean, row);
            Agreement.Relative(1e-12, row[4], values.SampleVariance, row);
            Agreement.Relative(1e-11, row[5], values.DegreesOfFreedom(), row);
            double[] modes = model.ModeVariances(CosineModes.Weights(n));
            double ratio = modes.Select((v, k) => v * Math.Cos(Math.PI * (k + 1) / n)).Sum() / modes.Sum();
            Agreement.Within(1e-12, row[6], ratio, row);
        }
    }

    [Theory]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(50)]
    public void IndependentValuesAreWorthTheirNumber(int count)
    {
        var lags = new double[count];
        lags[0] = 3;
        var values = new SerialCovariance(lags);
        Assert.Equal(count, values.Worth, 1e-12);
        Assert.Equal(count - 1, values.DegreesOfFreedom(), 1e-10);
        Assert.Equal(3, values.SampleVariance, 1e-12);
        Assert.Equal(0, values.Lag1);
    }

    [Fact]
    public void OnlyRatiosOfCovariancesMatter()
    {
        double[] lags = [1, 0.6, 0.3, 0.2];
        var one = new SerialCovariance(lags);
        var scaled = new SerialCovariance([.. lags.Select(l => 7 * l)]);
        Assert.Equal(one.Worth, scaled.Worth, 1e-12);
        Assert.Equal(one.DegreesOfFreedom(), scaled.DegreesOfFreedom(), 1e-12);
        Assert.Equal(7 * one.VarianceOfMean, scaled.VarianceOfMean, 1e-12);
        Assert.Equal(0.6, scaled.Lag1, 1e-15);
    }

    [Fact]
    public void TheLongerItLastsTheLessValuesAreWorth()
    {
        double[] worth = [.. new[] { 0, 0.3, 0.5, 0.8, 0.95 }.Select(r => new SerialModel(r, 1).Of(10).Worth)];
        Assert.Equal(worth.OrderDescending(), worth);
        double[] freedom = [.. new[] { 0, 0.3, 0.5, 0.8, 0.95 }.Select(r => new SerialModel(r, 1).Of(10).DegreesOfFreedom())];
        Assert.Equal(freedom.OrderDescending(), freedom);
    }

    [Fact]
    public void ASingleValueHasNoScatterToShow() => Assert.Equal(0, new SerialCovariance([2]).SampleVariance);

    [Fact]
    public void WithoutVarianceOrWithAGapThereIsNothing()
    {
        Assert.Throws<ArgumentException>(() => new SerialCovariance([]));
        Assert.Throws<ArgumentException>(() => new SerialCovariance([0, 0]));
        Assert.Throws<ArgumentException>(() => new SerialCovariance([1, double.NaN]));
    }
}
