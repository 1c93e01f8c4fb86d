using SweepStats.Floor;
using Xunit;

namespace SweepStats.Tests.Floor;

/// <summary>The log of the highest of N exponential looks.</summary>
public sealed class HeldLooksTests
{
    private const double K = DetectorNoise.DecibelsPerNeper;
    private const double Euler = 0.5772156649015329;
    private const double Apery = 1.2020569031595942;

    [Fact]
    public void CumulantsAgreeWithClosedFormAndQuadrature()
    {
        // R 4.2.2, fixtures/oracles/held.R: closed form up to 5 looks, adaptive quadrature over the probability beyond.
        foreach (double[] row in Fixtures.Numbers("oracles/held.csv"))
        {
            var looks = new HeldLooks(row[0]);
            Agreement.Within(1e-10, row[1], K * looks.LogMean, row);
            Agreement.Relative(1e-10, row[2], K * K * looks.Cumulants[0], row);
            Agreement.Relative(1e-9, row[3], K * K * K * looks.Cumulants[1], row);
            Agreement.Relative(1e-9, row[4], K * K * K * K * looks.Cumulants[2], row);
            Agreement.Within(1e-10, row[5], K * looks.Amplitude, row);
        }
    }

    [Fact]
    public void TheHighestOfOneIsASingleLook()
    {
        // Log mean −γ, cumulants ψ₁(1) to ψ₅(1): π²/6, −2ζ(3), π⁴/15, −24ζ(5), 8π⁶/63; mean amplitude Γ(3/2) = √π/2.
        var one = new HeldLooks(1);
        double[] cumulants = [Math.PI * Math.PI / 6, -2 * Apery, Math.Pow(Math.PI, 4) / 15, -24 * 1.0369277551433699,
            8 * Math.Pow(Math.PI, 6) / 63];
        Assert.Equal(-Euler, one.LogMean, 1e-13);
        Assert.Equal(cumulants, one.Cumulants, (a, b) => Math.Abs(a - b) < 1e-9 * Math.Abs(a));
        Assert.Equal(Math.Log(Math.PI / 4), one.Amplitude, 1e-13);
    }

    [Fact]
    public void OfTwoTheMeanIsThatByHand()
    {
        // P(max > x) = 2e^(−x) − e^(−2x): the mean of ln max is twice that of one look less that of one look at half the power,
        // −γ + ln 2.
        Assert.Equal(-Euler + Math.Log(2), new HeldLooks(2).LogMean, 1e-13);
        // In the same way for the amplitude: (2 − 1/√2)·√π/2.
        Assert.Equal(2 * Math.Log((2 - (1 / Math.Sqrt(2))) * Math.Sqrt(Math.PI) / 2), new HeldLooks(2).Amplitude, 1e-13);
    }

    [Theory]
    [InlineData(1, 0.5)]
    [InlineData(10, 0.999)]
    [InlineData(400, 1e-6)]
    public void AQuantileIsPassedWithItsProbability(double looks, double probability)
    {
        double x = Math.Exp(new HeldLooks(looks).Quantile(probability));
        Agreement.Relative(1e-10, probability, Math.Pow(1 - Math.Exp(-x), looks), looks, probability);
    }

    [Theory]
    [InlineData(1.5)]
    [InlineData(10)]
    [InlineData(3000)]
    public void TheScatterTellsTheLooks(double looks) =>
        Agreement.Relative(1e-9, looks, HeldLooks.Scattering(new HeldLooks(looks).Cumulants[0]).Looks, looks);

    [Fact]
    public void ScatterOutsideOfWhatLooksShowIsTakenToItsEnds()
    {
        Agreement.Relative(1e-9, 1, HeldLooks.Scattering(10).Looks);
        Agreement.Relative(1e-9, HeldLooks.Most, HeldLooks.Scattering(0).Looks);
    }
}
