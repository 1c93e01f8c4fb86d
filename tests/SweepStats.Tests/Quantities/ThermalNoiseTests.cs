using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Tests.Quantities;

public sealed class ThermalNoiseTests
{
    [Theory]
    // k·T with k = 1.380649e-23 J/K (SI Brochure 2019); recomputed: 290 K gives 4.0038821e-21 W/Hz.
    [InlineData(290, -173.9752)]
    [InlineData(293.15, -173.9283)]
    [InlineData(296.15, -173.8840)]
    [InlineData(300, -173.8280)]
    public void TheDensityIsThatOfTheTable(double kelvin, double expected)
    {
        Agreement.Within(0.000051, expected, ThermalNoise.DbmPerHertz(kelvin), kelvin);
    }

    [Fact]
    public void TheStandardTemperatureIsTheDefault()
    {
        Assert.Equal(-173.975, ThermalNoise.DbmPerHertz(), 0.0005);
        Assert.Equal(4.0038821e-21, ThermalNoise.BoltzmannConstant * ThermalNoise.StandardTemperature, 1e-28);
    }

    [Fact]
    public void TenTimesAsHotIsTenDecibelsMore()
    {
        Assert.Equal(ThermalNoise.DbmPerHertz(29) + 10, ThermalNoise.DbmPerHertz(290), 1e-12);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void WhatIsNoTemperatureIsRefused(double kelvin)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ThermalNoise.DbmPerHertz(kelvin));
    }
}
