using Xunit;
using Xunit.Sdk;

namespace SweepStats.Tests;

/// <summary>
/// The bounds of counted draws are themselves held against the binomial law, summed term by term in whole numbers elsewhere.
/// </summary>
public sealed class OftenTests
{
    [Fact]
    public void TailsAreThoseOfTheBinomialLaw()
    {
        // Closed forms by hand: 1 − 0.95²⁰, 0.95²⁰, 0.05²⁰'s neighbours; ½ and ten throws: 11 of 1 024 have nine or more.
        Assert.Equal(1 - Math.Pow(0.95, 20), Often.AsMany(1, 20, 0.05), 1e-12);
        Assert.Equal(Math.Pow(0.95, 20), Often.AsFew(0, 20, 0.05), 1e-12);
        Assert.Equal(11 / 1024.0, Often.AsMany(9, 10, 0.5), 1e-12);
        Assert.Equal(11 / 1024.0, Often.AsFew(1, 10, 0.5), 1e-12);
        Assert.Equal((1.0, 1.0), (Often.AsMany(0, 20, 0.05), Often.AsFew(20, 20, 0.05)));
    }

    // Python 3 fractions, term by term: P(X ≥ 5) = 0.002574, P(X ≥ 6) = 0.000329 of 20 at 5 %; P(X ≥ 13) = 0.001464, P(X ≥ 14) =
    // 0.000463 of 100.
    [Theory]
    [InlineData(20, 0.05, 5)]
    [InlineData(100, 0.05, 13)]
    public void OneMoreThanTheLastThatChanceMakesFails(int of, double promised, int most)
    {
        Often.AtMost(most, of, promised);
        Assert.Throws<TrueException>(() => Often.AtMost(most + 1, of, promised));
        Often.AtLeast(of - most, of, 1 - promised);
        Assert.Throws<TrueException>(() => Often.AtLeast(of - most - 1, of, 1 - promised));
    }

    [Fact]
    public void WhatIsNoCountFails()
    {
        Assert.Throws<TrueException>(() => Often.AtMost(0, 0, 0.05));
        Assert.Throws<InRangeException>(() => Often.AtMost(21, 20, 0.05));
        Assert.Throws<InRangeException>(() => Often.AtLeast(-1, 20, 0.05));
        Assert.Throws<TrueException>(() => Often.AtMost(1, 20, 0));
    }

    [Fact]
    public void AQuarterIsDrawnAndNoFewerThanTwelve()
    {
        int[] all = [6, 12, 40, 60, 100, 300];
        Assert.Equal(Draws.Full ? all : [6, 12, 12, 15, 25, 75], all.Select(Draws.Of));
        Assert.Equal(Enumerable.Range(1, Draws.Of(60)).Select(i => (ulong)i), Draws.Seeds(60));
        Assert.True(Draws.IsFull("full"));
        Assert.False(Draws.IsFull(null) || Draws.IsFull(""));
        Assert.Throws<InvalidOperationException>(() => Draws.IsFull("Full"));
    }
}
