using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Statistics;

public sealed class CornishFisherTests
{
    [Fact]
    public void WithoutSkewnessAndExcessItIsTheNormalQuantile()
    {
        Assert.Equal(1.959963984540054, CornishFisher.Quantile(0.975, 0, 0), 1e-14);
    }

    [Fact]
    public void TheTermsAreThoseOfTheHandbook()
    {
        // Abramowitz and Stegun 26.2.49 at z = 1.2815515655446004 (p = 0.9): (z² − 1)/6 = 0.1070624, (z³ − 3z)/24 = −0.0724949,
        // (2z³ − 5z)/36 = −0.0610621.
        double z = 1.2815515655446004;
        Assert.Equal(z + 0.1070624 * 0.5, CornishFisher.Quantile(0.9, 0.5, 0) - (0.0610621 * 0.25), 1e-6);
        Assert.Equal(z - (0.0724949 * 0.4), CornishFisher.Quantile(0.9, 0, 0.4), 1e-6);
    }

    [Fact]
    public void AChiSquareVariableIsMetClosely()
    {
        // 100 degrees of freedom at 0.975: 129.5612 (any table). Skewness √(8/ν), excess 12/ν.
        double quantile = 100 + (Math.Sqrt(200) * CornishFisher.Quantile(0.975, Math.Sqrt(0.08), 0.12));
        Assert.Equal(129.5612, quantile, 0.01);
    }

    [Fact]
    public void TurningTheSkewnessTurnsTheTail()
    {
        Assert.Equal(-CornishFisher.Quantile(0.95, 0.3, 0.2), CornishFisher.Quantile(0.05, -0.3, 0.2), 1e-14);
    }
}
