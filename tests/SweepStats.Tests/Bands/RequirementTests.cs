using SweepStats.Bands;
using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Tests.Bands;

public sealed class RequirementTests
{
    [Fact]
    public void ALineRunsStraightOverTheLogarithmOfFrequency()
    {
        // 20 dB at 10 kHz to 80 dB at 10 MHz is 20·log10(f/Hz) − 60 dB, the magnetic line of a military standard (from memory,
        // MIL-STD-188-125-1).
        Requirement line = Requirement.Line([new(new Hertz(10e3), new Decibels(20)), new(new Hertz(10e6), new Decibels(80))]);
        Assert.Equal(40, line.At(new Hertz(100e3))!.Value.Value, 9);
        Assert.Equal((20 * Math.Log10(2.5e6)) - 60, line.At(new Hertz(2.5e6))!.Value.Value, 9);
    }

    [Fact]
    public void OutsideTheLineNothingIsAsked()
    {
        Requirement line = Requirement.Line([new(new Hertz(10e3), new Decibels(20)), new(new Hertz(10e6), new Decibels(80))]);
        Assert.Null(line.At(new Hertz(9.99e3)));
        Assert.Null(line.At(new Hertz(10.01e6)));
        Assert.Equal(80, line.At(new Hertz(10e6))!.Value.Value);
    }

    [Fact]
    public void AConstantHoldsEverywhere() =>
    Assert.Equal(20, Requirement.Constant(new Decibels(20)).At(new Hertz(0))!.Value.Value);

    [Fact]
    public void PointsThatDoNotRiseAreRefused() => Assert.Contains("point 2", Assert.Throws<ArgumentException>(() =>
        Requirement.Line([new(new Hertz(10e3), new Decibels(20)), new(new Hertz(10e3), new Decibels(30))])).Message,
            StringComparison.Ordinal);
}
