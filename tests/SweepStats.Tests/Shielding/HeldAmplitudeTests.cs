using SweepStats.Shielding;
using Xunit;

namespace SweepStats.Tests.Shielding;

/// <summary>Readings of kept looks as amplitudes.</summary>
public sealed class HeldAmplitudeTests
{
    [Fact]
    public void AReadingOfTwiceTheNoiseHoldsASignalAsLargeAsTheNoise()
    {
        // 2 − 1 = 1, which is 0 dB. A reading of 4 leaves 3, a noise of 0.5 leaves 1.5.
        HeldAmplitude twice = new(2, -1);
        Assert.Equal(1, twice.Signal);
        Assert.Equal(0, HeldAmplitude.Level(twice.Signal), 1e-12);
        Assert.Equal(20 * Math.Log10(3), twice.Moved(2, 1), 1e-12);
        Assert.Equal(20 * Math.Log10(1.5), twice.Moved(1, 0.5), 1e-12);
    }

    [Theory]
    [InlineData(1.1, -1)]
    [InlineData(2, -1)]
    [InlineData(1000, -1)]
    [InlineData(0.2, 0.7)]
    public void SlopesAreThoseOfTheSharesInTheSignal(double reading, double noise)
    {
        // d ln(r + n) / d ln r = r/(r + n), up to the bend over 0.001 dB.
        HeldAmplitude at = new(reading, noise);
        Assert.Equal(1, at.SlopeOfReading / (reading / at.Signal), 1e-6);
        Assert.Equal(1, at.SlopeOfFloor / (noise / at.Signal), 1e-6);
    }

    [Theory]
    [InlineData(1.1, -1)]
    [InlineData(3, 0.4)]
    public void TheSlopeIsThatOfTheChord(double reading, double noise)
    {
        HeldAmplitude at = new(reading, noise);
        double up = HeldAmplitude.Of(0.001), down = 1 / up;
        Assert.Equal((at.Moved(up, 1) - at.Moved(down, 1)) / 0.002, at.SlopeOfReading, 1e-9);
        Assert.Equal((at.Moved(1, up) - at.Moved(1, down)) / 0.002, at.SlopeOfFloor, 1e-9);
    }

    [Fact]
    public void MovingReadingAndFloorTogetherMovesTheSignalAsFar()
    {
        HeldAmplitude at = new(1.7, -1.02);
        Assert.Equal(3, at.Moved(HeldAmplitude.Of(3), HeldAmplitude.Of(3)), 1e-12);
        Assert.Equal(1, at.SlopeOfReading + at.SlopeOfFloor, 1e-5);
    }

    [Fact]
    public void AReadingWithinTheNoiseHoldsNoSignalThatIsSure()
    {
        HeldAmplitude hidden = new(0.9, -1);
        Assert.Equal(double.NegativeInfinity, HeldAmplitude.Level(hidden.Signal));
        Assert.Equal(double.PositiveInfinity, hidden.Moved(2, 1));
        Assert.Equal(double.NaN, hidden.Moved(1, 1));
        Assert.Equal(double.NegativeInfinity, new HeldAmplitude(1.1, -1).Moved(0.5, 1));
    }
}
