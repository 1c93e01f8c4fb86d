using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Tests.Quantities;

public sealed class ReflectionTests
{
    // By hand: (s − 1)/(s + 1) is 0, 1/5, 1/3, 1/2; the return loss is 20·log10 of its inverse.
    [Theory]
    [InlineData(1, 0, double.PositiveInfinity)]
    [InlineData(1.5, 0.2, 13.9794000867204)]
    [InlineData(2, 0.333333333333333, 9.54242509439325)]
    [InlineData(3, 0.5, 6.02059991327962)]
    [InlineData(double.PositiveInfinity, 1, 0)]
    public void StandingWaveRatioAndReturnLossGiveTheSameMagnitude(double ratio, double magnitude, double returnLoss)
    {
        Assert.Equal(magnitude, Reflection.OfStandingWaveRatio(ratio).Magnitude, 14);
        Assert.Equal(magnitude, Reflection.OfReturnLoss(new Decibels(returnLoss)).Magnitude, 14);
    }

    [Fact]
    public void WhatNoPassivePortDoesIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new Reflection(1.001));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Reflection(double.NaN));
        Assert.Throws<ArgumentOutOfRangeException>(() => Reflection.OfReturnLoss(new Decibels(-0.1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Reflection.OfStandingWaveRatio(0.99));
        Assert.Throws<ArgumentOutOfRangeException>(() => Reflection.OfStandingWaveRatio(double.NaN));
    }
}
