using System.Globalization;
using System.Text;
using SweepStats.Files.Traces.Text;
using Xunit;

namespace SweepStats.Acceptance.Files;

public sealed class StrictNumbers
{
    [Theory]
    [InlineData("1,5")]
    [InlineData("NaN")]
    [InlineData("nan")]
    [InlineData("Infinity")]
    [InlineData("-inf")]
    [InlineData("1e400")]
    [InlineData("1e99999")]
    [InlineData("1.5dB")]
    [InlineData("1d3")]
    [InlineData("0x10")]
    [InlineData("1.2.3")]
    [InlineData("1 000")]
    [InlineData("1_000")]
    [InlineData("--1")]
    [InlineData("+")]
    [InlineData(".")]
    [InlineData("")]
    [InlineData("1e")]
    [InlineData("1e+")]
    [InlineData("e5")]
    [InlineData("1.5\0")]
    [InlineData("−1.5")]
    public void WhatIsNoPlainFiniteNumberIsRefused(string text) => Assert.False(Parse(text, '.', 0, out _));

    [Theory]
    [InlineData("0")]
    [InlineData("-0.0")]
    [InlineData("+1.0E+05")]
    [InlineData(".419")]
    [InlineData("-.826")]
    [InlineData("5.")]
    [InlineData("4.3E-007")]
    [InlineData("6.07215275000001")]
    [InlineData("30000000.00000000000000000001")]
    [InlineData("123456789012345678901234567890")]
    [InlineData("1.7976931348623157e308")]
    [InlineData("5e-324")]
    [InlineData("9007199254740993")]
    public void NumbersAreExactToTheLastBit(string text)
    {
        Assert.True(Parse(text, '.', 0, out double value));
        Assert.Equal(BitConverter.DoubleToInt64Bits(double.Parse(text, CultureInfo.InvariantCulture)),
            BitConverter.DoubleToInt64Bits(value));
    }

    [Fact]
    public void AHundredThousandRandomNumbersAgreeWithTheRuntime()
    {
        var random = new Random(20260305);
        for (int i = 0; i < 100_000; i++)
        {
            double number = (random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-30, 30));
            string text = number.ToString(random.Next(3) switch
            {
                0 => "R",
                1 => "E" + random.Next(0, 17),
                _ => "F" + random.Next(0, 12)
            }, CultureInfo.InvariantCulture);
            Assert.True(Parse(text, '.', 0, out double value), text);
            Assert.True(double.Parse(text, CultureInfo.InvariantCulture).Equals(value), text);
        }
    }

    [Fact]
    public void ADecimalCommaIsReadOnlyWhereItIsTheMark()
    {
        Assert.True(Parse("-87,43", ',', 0, out double value));
        Assert.Equal(-87.43, value);
        Assert.False(Parse("-87.43", ',', 0, out _));
        Assert.False(Parse("1.234,5", ',', 0, out _));
    }

    [Fact]
    public void ScalingToHertzIsDoneOnTheDecimalText()
    {
        // As doubles, 1.001 × 1e9 and 0.0701 × 1e6 miss the whole number.
        Assert.True(Parse("1.001", '.', 9, out double giga));
        Assert.Equal(1_001_000_000.0, giga);
        Assert.True(Parse("0.0701", '.', 6, out double mega));
        Assert.Equal(70_100.0, mega);
    }

    private static bool Parse(string text, char mark, int exponent, out double value) =>
        StrictNumber.TryParse(Encoding.UTF8.GetBytes(text), (byte)mark, exponent, out value);
}
