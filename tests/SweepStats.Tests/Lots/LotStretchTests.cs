using System.Collections.Immutable;
using SweepStats.Lots;
using SweepStats.Quantities;
using Xunit;

namespace SweepStats.Tests.Lots;

/// <summary>Stretches of made-up frequencies 1, 2, 3 MHz and so on, in which every lot has 40 dB unless said.</summary>
public sealed class LotStretchTests
{
    private static readonly ImmutableArray<string> Three = ["A", "B", "C"];

    [Fact]
    public void NeighboursThatShowTheSameLotMakeOneStretch()
    {
        LotStretch found = Assert.Single(Of(Three, Alike(3), Differ(3), Differ(3), Alike(3)));
        Assert.Equal((2e6, 3e6), (found.Band.Start.Value, found.Band.Stop.Value));
        Assert.Equal(("B", 2, false), (found.Lot, found.Frequencies, found.AtLeast));
        Assert.Equal(-3, found.ApartDb, 1e-9);
    }

    [Fact]
    public void TheLevelItselfIsADifferenceAndWhatLiesAboveIsNone()
    {
        Assert.Single(Of(Three, Differ(3) with { Adjusted = 0.05 }));
        Assert.Empty(Of(Three, Differ(3) with { Adjusted = 0.0501 }, Differ(3) with { Adjusted = null }));
    }

    // Bounds only ever move up: where the others are bounds they lie higher still.
    [Fact]
    public void ALotBelowBoundsLiesAtLeastThatFarBelow()
    {
        LotStretch found = Assert.Single(Of(Three, Differ(3), At(false, (46, true), (40, false), (46, true))));
        Assert.Equal(("B", true), (found.Lot, found.AtLeast));
        Assert.Equal((-3.0 - 6) / 2, found.ApartDb, 1e-9);
    }

    [Fact]
    public void ALotAboveTheOthersThatIsABoundLiesAtLeastThatFarAbove()
    {
        LotStretch found = Assert.Single(Of(Three, At(false, (40, false), (44, true), (40, false))));
        Assert.Equal(("B", true), (found.Lot, found.AtLeast));
        Assert.Equal(4, found.ApartDb, 1e-9);
    }

    [Fact]
    public void ALowerLotThatIsABoundItselfIsHidden()
    {
        LotStretch found = Assert.Single(Of(Three, At(false, (46, false), (40, true), (46, true))));
        Assert.Null(found.Lot);
        Assert.True(found.AtLeast);
    }

    [Fact]
    public void AHigherLotBesideABoundIsHidden() =>
    Assert.Null(Assert.Single(Of(Three, At(false, (40, true), (44, false), (40, false)))).Lot);

    [Fact]
    public void WhatIsHiddenBelongsToTheStretchAndNotToItsSize()
    {
        LotStretch found = Assert.Single(Of(Three, Differ(3), At(false, (60, false), (40, true), (60, false)), Differ(5)));
        Assert.Equal(("B", 3), (found.Lot, found.Frequencies));
        Assert.Equal(-4, found.ApartDb, 1e-9);
    }

    [Theory]
    [InlineData(3, 1)]
    [InlineData(4, 2)]
    public void ThreeFrequenciesThatShowNothingDoNotEndAStretch(int gap, int stretches)
    {
        ImmutableArray<LotStretch> found = Of(Three, [Differ(3), .. Enumerable.Repeat(Alike(1), gap), Differ(3)]);
        Assert.Equal(stretches, found.Length);
        Assert.Equal(2, found.Sum(s => s.Frequencies));
    }

    [Fact]
    public void AnotherLotOrAnotherSideIsAnotherStretch()
    {
        ImmutableArray<LotStretch> found = Of(Three, Differ(3), Differ(-5), At(false, (40, false), (40, false), (41, false)));
        Assert.Equal([("B", 5.0), ("B", -3.0), ("C", 1.0)], found.Select(s => (s.Lot!, Math.Round(s.ApartDb, 9))));
        Assert.All(found, s => Assert.Equal(s.Band.Start, s.Band.Stop));
    }

    [Fact]
    public void AnotherLotBetweenDoesNotEndAStretch()
    {
        ImmutableArray<LotStretch> found = Of(Three, Differ(3), At(false, (40, false), (40, false), (48, false)), Differ(3));
        Assert.Equal([("C", 1), ("B", 2)], found.Select(s => (s.Lot!, s.Frequencies)));
    }

    [Fact]
    public void WideAndFarComesFirst()
    {
        ImmutableArray<LotStretch> found = Of(Three, Differ(-4), Differ(3), Differ(3), Differ(3));
        Assert.Equal([-3.0, 4], found.Select(s => Math.Round(s.ApartDb, 9)));
    }

    [Fact]
    public void OfTwoLotsTheFirstIsHeldAgainstTheSecond()
    {
        LotStretch found = Assert.Single(Of(["A", "B"], At(false, (40, false), (43, false)), At(false, (40, false), (43, true))));
        Assert.Equal(("A", true), (found.Lot, found.AtLeast));
        Assert.Equal(-3, found.ApartDb, 1e-9);
        Assert.Null(Assert.Single(Of(["A", "B"], At(false, (40, true), (43, false)))).Lot);
        Assert.Equal(("A", 3.0), Assert.Single(Of(["A", "B"], At(false, (43, true), (40, false)))) is var above
            ? (above.Lot, above.ApartDb) : default);
    }

    private static LotFrequency Alike(double less) => Differ(less) with { Adjusted = 0.5 };

    private static LotFrequency Differ(double less) => At(false, (40, false), (40 - less, false), (40, false));

    private static LotFrequency At(bool alike, params (double MeanDb, bool Bound)[] lots) => new()
    {
        At = new Hertz(1e6),
        Lots = [.. lots.Select(l => new LotPoint(l.MeanDb, l.Bound, null, null))],
        Scatter = [],
        Capped = lots.Count(l => l.Bound),
        Probability = 0.001,
        Adjusted = alike ? 0.5 : 0.01,
    };

    private static ImmutableArray<LotStretch> Of(ImmutableArray<string> lots, params LotFrequency[] frequencies) =>
        LotStretch.Of([.. frequencies.Select((f, i) => f with { At = new Hertz((i + 1) * 1e6) })], lots, 0.05);
}
