using SweepStats.Uncertainty;
using Xunit;

namespace SweepStats.Tests.Uncertainty;

/// <summary>Examples of JCGM 106:2012; inputs and printed results from memory, recomputed with the normal distribution.</summary>
public sealed class ConformityTests
{
    [Theory]
    [InlineData(-5.47, 0.05, double.NegativeInfinity, -5.40, 0.91924)] // breakdown voltage, printed 0.92
    [InlineData(509.7, 8.6, 490, double.PositiveInfinity, 0.98901)] // pressure container, printed 0.99
    [InlineData(13.6, 1.8, 12.5, 16.3, 0.66263)] // oil, printed 0.66
    public void ProbabilityOfConformance(double estimate, double u, double low, double high, double expected) =>
        Assert.Equal(expected, Conformity.Probability(estimate, u, low, high), 5e-6);

    [Fact]
    public void SpeedIsActedOnWhereItIsAlmostSurelyTooHigh()
    {
        // Limit 100 km/h, relative standard uncertainty 2 %, 99.9 %: 106.59, printed 107.
        Assert.Equal(0.999, 1 - Conformity.Probability(106.59, 0.02 * 106.59, double.NegativeInfinity, 100), 2e-5);
    }

    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(0.5, 0.1587)]
    [InlineData(0.83, 0.0485)]
    [InlineData(1, 0.02275)]
    [InlineData(1.5, 0.00135)]
    public void GuardBandOfAShareOfTheExpandedUncertainty(double share, double risk) =>
        // w = r·U with U = 2u.
        Assert.Equal(risk, Conformity.LargestSpecificRisk(2 * share), 5e-5);

    [Theory]
    [InlineData(0, 0.01894, 0.03721)]
    [InlineData(0.04, 0.00433, 0.1147)]
    [InlineData(0.08, 0.00047, 0.2477)]
    public void BatchOfResistors(double guard, double consumer, double producer)
    {
        // N(1500, 0.12) ohm measured to 0.04 ohm, tolerance ±0.2 ohm; recomputed values, the printed ones are rounded.
        (double c, double p) = Conformity.GlobalRisks(1500, 0.12, 0.04, new(1499.8, 1500.2), new(1499.8 + guard, 1500.2 - guard));
        Assert.Equal(consumer, c, 6e-6);
        Assert.Equal(producer, p, 6e-5);
    }

    [Fact]
    public void FewDegreesOfFreedomMakeItLessSure()
    {
        Assert.True(Conformity.Probability(2, 1, 0, double.PositiveInfinity, 3) < Conformity.Probability(2, 1, 0,
            double.PositiveInfinity));
        Assert.Equal(0.5, Conformity.Probability(0, 1, 0, double.PositiveInfinity, 3), 1e-12);
        Assert.Throws<ArgumentOutOfRangeException>(() => Conformity.Probability(0, 0, 0, 1));
    }
}
