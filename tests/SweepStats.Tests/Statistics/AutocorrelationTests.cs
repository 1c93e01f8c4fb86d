using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class AutocorrelationTests
{
    // Published values: the NIST sets in SampleTests.
    [Fact]
    public void FourStepsGiveWhatHandArithmeticGives()
    {
        // 1, 2, 3, 6: deviations −2, −1, 0, 3; products 2 + 0 + 0 over squares 14.
        Assert.Equal(2.0 / 14, Autocorrelation.Lag1([1, 2, 3, 6]), 1e-15);
    }

    [Fact]
    public void ShiftScaleAndTurningRoundChangeNothing()
    {
        double[] values = [-87.4, -86.9, -88, -87.1, -87.7, -86.4];
        double plain = Autocorrelation.Lag1(values);
        Assert.Equal(plain, Autocorrelation.Lag1([.. values.Select(v => v + 60)]), 1e-12);
        Assert.Equal(plain, Autocorrelation.Lag1([.. values.Select(v => v * -7)]), 1e-12);
        Assert.Equal(plain, Autocorrelation.Lag1([.. values.Reverse()]), 1e-12);
    }

    [Fact]
    public void ASeriesWithoutScatterHasNoCoefficient()
    {
        Assert.True(double.IsNaN(Autocorrelation.Lag1([3, 3, 3])));
        Assert.Throws<ArgumentException>(() => Autocorrelation.Lag1([3]));
    }
}
