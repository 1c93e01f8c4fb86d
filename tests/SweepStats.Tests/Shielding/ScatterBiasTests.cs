using SweepStats.Floor;
using SweepStats.Shielding;
using Xunit;

namespace SweepStats.Tests.Shielding;

public sealed class ScatterBiasTests
{
    [Theory]
    [InlineData(1.0)]
    [InlineData(20.0)]
    [InlineData(double.PositiveInfinity)]
    public void ItIsWhatAveragingOverTheScatterAddsToTheCurve(double looks)
    {
        // Mean of the curve over x ± σ (two points of equal weight have standard deviation σ) minus the curve: σ²g''/2 up to
        // fourth order.
        var noise = new DetectorNoise(looks);
        const double sigma = 0.2;
        for (double level = -8; level <= 12; level += 4)
        {
            double Rise(double x) => noise.Rise(Math.Pow(10, x / 10));
            double expected = ((Rise(level + sigma) + Rise(level - sigma)) / 2) - Rise(level);
            Assert.Equal(expected, SignalInNoise.ScatterBias(Rise(level), sigma, noise), (0.02 * expected) + 1e-8);
        }
    }

    [Fact]
    public void WorkedByHandAtZeroDecibelsOverNoiseWithoutScatter()
    {
        // g = K·ln(1+γ), γ = e^(x/K): g'' = γ/(1+γ)²/K = 0.25/4.342945 at γ = 1; half of it times 2² dB² is 0.115129 dB.
        var noise = new DetectorNoise(double.PositiveInfinity);
        Assert.Equal(0.115129, SignalInNoise.ScatterBias(10 * Math.Log10(2), 2, noise), 0.001);
    }

    [Fact]
    public void WithoutScatterOrFarFromTheNoiseThereIsNone()
    {
        var noise = new DetectorNoise(20);
        Assert.Equal(0, SignalInNoise.ScatterBias(3, 0, noise));
        Assert.Equal(0, SignalInNoise.ScatterBias(-1, 2, noise));
        Assert.Equal(0, SignalInNoise.ScatterBias(25, 2, noise));
        Assert.InRange(SignalInNoise.ScatterBias(19.9, 2, noise), 0, 0.005);
    }
}
