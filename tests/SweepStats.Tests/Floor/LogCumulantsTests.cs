using SweepStats.Floor;
using Xunit;

namespace SweepStats.Tests.Floor;

/// <summary>How log readings of a signal in noise scatter and lean.</summary>
public sealed class LogCumulantsTests
{
    [Fact]
    public void VarianceAndThirdCumulantAgreeWithAnIntegralOverTheDensity()
    {
        // R 4.2.2, fixtures/oracles/skewness.R; above M + Mγ of 60 the delta method stands in, right to 3 % of the variance and 8
        // % of the third cumulant.
        foreach (double[] row in Fixtures.Numbers("oracles/skewness-cumulants.csv"))
        {
            (double variance, double third) = new DetectorNoise(row[0]).LogCumulants(row[1]);
            bool delta = row[0] * (1 + Math.Pow(10, row[1] / 10)) > 60;
            Agreement.Relative(delta ? 0.03 : 1e-8, row[2], variance, row);
            Agreement.Relative(delta ? 0.08 : 1e-7, row[3], third, row);
        }
    }

    [Fact]
    public void AveragesInDecibelsScatterAndLeanLess()
    {
        (double variance, double third) = new DetectorNoise(1).LogCumulants(3);
        (double averaged, double thirdAveraged) = new DetectorNoise(1, 4).LogCumulants(3);
        Assert.Equal(variance / 4, averaged, 1e-12);
        Assert.Equal(third / 16, thirdAveraged, 1e-12);
        Assert.Equal((0, 0), new DetectorNoise(double.PositiveInfinity).LogCumulants(3));
    }
}
