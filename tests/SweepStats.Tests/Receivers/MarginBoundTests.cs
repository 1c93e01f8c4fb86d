using SweepStats.Receivers;
using Xunit;
using static SweepStats.Tests.Receivers.Station;

namespace SweepStats.Tests.Receivers;

public sealed class MarginBoundTests
{
    private const double Z95 = 1.6448536269514722;

    [Theory]
    [InlineData(70, 3)]
    [InlineData(12.5, 0.4)]
    [InlineData(120, 10)]
    public void OneStationGivesItsMarginLessOrMoreZTimesU(double margin, double u)
    {
        Assert.Equal(margin - (Z95 * u), AtLeast(Silent(margin, u))!.Value, 1e-6);
        Assert.Equal(margin + (Z95 * u), AtMost(Heard(margin, u))!.Value, 1e-6);
        Assert.Null(AtMost(Silent(margin, u)));
        Assert.Null(AtLeast(Heard(margin, u)));
    }

    /// <summary>Two alike with errors of their own: Φ(z)² = 0.951 (95 % and 0.1 % for the selection), so Φ(z) = √0.951 = 0.975192
    /// and z = 1.96289 by tables of Φ.</summary>
    [Fact]
    public void TwoStationsAlikeAllowForTheLargerErrorOfTheTwo() =>
        Assert.Equal(60 - (3 * 1.96315), AtLeast(Silent(60), Silent(60))!.Value, 2e-3);

    [Fact]
    public void AFarSmallerMarginCostsNextToNothingAndAFarLargerOneThatIsHeardNothingMore()
    {
        double alone = AtLeast(Silent(60))!.Value;
        Assert.InRange(AtLeast(Silent(60), Silent(20))!.Value, alone - 0.03 * 3, alone);
        Assert.InRange(AtLeast(Silent(60), Silent(20), Heard(100))!.Value, alone - 0.03 * 3, alone);
    }

    [Fact]
    public void ShiftingAllLevelsAndSensitivitiesChangesNothing()
    {
        ReceiverObservation[] some = [Silent(50), Silent(57, 2), Heard(62), Heard(80, 5)];
        ReceiverObservation[] shifted =
            [.. some.Select(o =>
            o with { Level = o.Level with { Dbm = o.Level.Dbm + 17 }, SensitivityDbm = o.SensitivityDbm + 17 })];
        Assert.Equal(AtLeast(some)!.Value, AtLeast(shifted)!.Value, 1e-6);
        Assert.Equal(AtMost(some)!.Value, AtMost(shifted)!.Value, 1e-6);
    }

    [Fact]
    public void MarginsAllLargerByOneDecibelMoveBothBoundsByOne()
    {
        ReceiverObservation[] some = [Silent(50), Silent(57, 2), Heard(62), Heard(80, 5)];
        ReceiverObservation[] larger = [.. some.Select(o => o with { SensitivityDbm = o.SensitivityDbm - 1 })];
        Assert.Equal(AtLeast(some)!.Value + 1, AtLeast(larger)!.Value, 1e-6);
        Assert.Equal(AtMost(some)!.Value + 1, AtMost(larger)!.Value, 1e-6);
    }

    [Fact]
    public void EverythingTwiceAsLargeGivesBoundsTwiceAsLarge() =>
        Assert.Equal(2 * AtLeast(Silent(25, 1.5), Silent(28, 1), Heard(31, 2))!.Value,
            AtLeast(Silent(50, 3), Silent(56, 2), Heard(62, 4))!.Value, 1e-5);

    [Fact]
    public void TurnedOverTheUpperBoundIsTheLowerOne() =>
        Assert.Equal(-AtLeast(Silent(-50), Silent(-57, 2), Heard(-40))!.Value, AtMost(Heard(50), Heard(57, 2), Silent(40))!.Value,
            1e-6);

    [Fact]
    public void TheOrderOfStationsDoesNotCount()
    {
        ReceiverObservation[] some = [Silent(50), Silent(57, 2), Heard(62), Silent(55, 6)];
        Assert.Equal(AtLeast(some)!.Value, AtLeast([.. some.Reverse()])!.Value, 1e-6);
    }

    /// <summary>That it fell silent where it might have been heard can only speak for more shielding.</summary>
    [Theory]
    [InlineData(40)]
    [InlineData(58)]
    [InlineData(66)]
    [InlineData(90)]
    public void AStationThatIsSilentInsteadOfHeardNeverLowersTheBound(double margin) =>
        Assert.True(
            AtLeast(Silent(60), Heard(75), Silent(margin, 4))!.Value >= AtLeast(Silent(60), Heard(75),
            Heard(margin, 4))!.Value - 1e-6);

    /// <summary>
    /// A further silent station may lower the bound, since the larger of two stated margins is apt to be stated too high; by no
    /// more than two alike cost, and not where it lies plainly above.
    /// </summary>
    [Fact]
    public void AFurtherSilentStationCostsAtMostItsChanceToBeTheLuckyOne()
    {
        double alone = AtLeast(Silent(60))!.Value, most = (1.96315 - Z95) * 3;
        for (double margin = 30; margin <= 90; margin += 2.5)
        {
            double both = AtLeast(Silent(60), Silent(margin))!.Value;
            Assert.True(both >= alone - most - 0.01, $"{margin}: {both}");
            Assert.True(margin < 61 || both >= alone - 1e-6, $"{margin}: {both}");
        }
    }

    /// <summary>One source stepped down before one receiver: all margins err alike, and no step costs anything but the hundredth
    /// of u that pays for the selection.</summary>
    [Fact]
    public void StepsOfOneSourceWithOneReceiverCountAsOneStation()
    {
        ReceiverObservation[] steps =
            [.. new[] { 40.0, 50, 58, 59, 60 }.Select(m => Silent(m) with { Receiver = "one", Source = "one" })];
        Assert.InRange(AtLeast(steps)!.Value, 60 - (Z95 * 3) - 0.05, 60 - (Z95 * 3));
    }

    [Fact]
    public void WhatIsSharedMakesTheBoundNoLower()
    {
        ReceiverObservation[] own = [Silent(58), Silent(59), Silent(60), Silent(60.5)];
        double alone = AtLeast(own)!.Value, shared = AtLeast([.. WithOneReceiver(own)])!.Value;
        Assert.InRange(shared, alone, 60.5 - (Z95 * 3));
        Assert.True(shared > alone + 0.05);
    }

    [Fact]
    public void MoreConfidenceGivesAWiderInterval()
    {
        double[] bounds =
            [.. new[] { 0.6, 0.9, 0.95, 0.99, 0.9999 }.Select(level =>
            MarginBound.AtLeast([Silent(60), Silent(57), Heard(70)], level)!.Value)];
        Assert.Equal(bounds.OrderDescending(), bounds);
    }

    [Fact]
    public void FiguresTakenForExactAreNoDivisionByNothing() =>
        Assert.Equal(60, AtLeast(Silent(60, 0), Silent(50, 3), Heard(80, 0))!.Value, 1e-3);

    [Fact]
    public void ManyStationsAreReckonedWith()
    {
        ReceiverObservation[] many = [.. Enumerable.Range(0, ReceiverTest.MostObservations)
            .Select(i => i % 2 == 0 ? Silent(30 + (0.1 * i)) : Heard(60 + (0.1 * i)))];
        Assert.InRange(AtLeast([.. WithOneReceiver(many)])!.Value, 30, 49.8);
    }
}
