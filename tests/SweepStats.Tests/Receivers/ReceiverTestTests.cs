using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Receivers;
using SweepStats.Statistics;
using Xunit;
using static SweepStats.Tests.Receivers.Station;

namespace SweepStats.Tests.Receivers;

public sealed class ReceiverTestTests
{
    [Theory]
    [InlineData(null, false, EvidenceState.Uncontrolled)]
    [InlineData(false, false, EvidenceState.SilentUncovered)]
    [InlineData(true, false, EvidenceState.Counts)]
    [InlineData(null, true, EvidenceState.Counts)]
    [InlineData(false, true, EvidenceState.SilentUncovered)]
    public void SilenceIsEvidenceOnlyWhereTheReceiverWasHeardBefore(bool? uncovered, bool covered, EvidenceState state)
    {
        ReceiverObservation observation = Silent(60) with { HeardUncovered = uncovered, HeardCovered = covered };
        Assert.Equal(state, observation.State);
        Assert.Equal(state == EvidenceState.Counts ? 1 : 0, Test(observation).Groups.Length);
    }

    [Fact]
    public void AReceiverThatHearsWhatItCannotIsNoEvidence()
    {
        Assert.Equal(EvidenceState.BelowSensitivity, Silent(-9.1).State);
        Assert.Equal(EvidenceState.Counts, Silent(-8.9).State);
    }

    [Fact]
    public void StationsOfLikeFrequencyGoTogetherAndOthersDoNot()
    {
        double[] hertz = [145e6, 100e6, 126e6, 126.1e6, 433e6];
        var test = Test([.. hertz.Select(f => Silent(60) with { Frequency = new Hertz(f) })]);
        Assert.Equal(
            [new FrequencyBand(new(100e6), new(126e6)), new FrequencyBand(new(126.1e6), new(145e6)),
            new FrequencyBand(new(433e6), new(433e6))], test.Groups.Select(g => g.Band!.Value));
        ReceiverQuestion apart = new() { Ratio = 1 };
        Assert.Equal(5, ReceiverTest.Of(test.Observations, apart).Groups.Length);
    }

    [Theory]
    [InlineData(60, 55, ClaimOutcome.Supported)]
    [InlineData(60, 55.1, ClaimOutcome.NotShown)]
    [InlineData(60, 70, ClaimOutcome.NotShown)]
    public void AClaimIsSupportedUpToTheBound(double margin, double claim, ClaimOutcome outcome) =>
        Assert.Equal(outcome, ReceiverTest.Of([Silent(margin)], new ReceiverQuestion { Claim = new Decibels(claim) }).Claim);

    [Fact]
    public void AClaimAboveTheUpperBoundIsRefutedAndOneBandThatDoesNotShowItIsEnough()
    {
        ReceiverQuestion asked = new() { Claim = new Decibels(50) };
        Assert.Equal(ClaimOutcome.Refuted, ReceiverTest.Of([Heard(44)], asked).Claim);
        Assert.Equal(ClaimOutcome.NotShown,
            ReceiverTest.Of([Silent(70), Silent(40) with { Frequency = new Hertz(433e6) }], asked).Claim);
        Assert.Equal(ClaimOutcome.NotShown, ReceiverTest.Of([Silent(70) with { HeardUncovered = null }], asked).Claim);
    }

    [Theory]
    [InlineData(145e6, ClaimOutcome.NotShown)]
    [InlineData(433e6, ClaimOutcome.Supported)]
    public void AStationHeardThatIsNoEvidenceWithholdsTheClaimAndTheWordOfItsOwnBand(double hertz, ClaimOutcome ofTheBand)
    {
        ReceiverQuestion asked = new() { Claim = new Decibels(50) };
        ReceiverObservation odd = Heard(70) with { HeardUncovered = false, Frequency = new Hertz(hertz) };
        var test = ReceiverTest.Of([Silent(70), odd], asked);
        Assert.Equal((ClaimOutcome.NotShown, ofTheBand), (test.Claim, Assert.Single(test.Groups).Claim!.Value));
        Assert.Equal(odd, Assert.Single(test.HeardAside));
        Assert.Equal(ofTheBand == ClaimOutcome.NotShown ? 1 : 0, test.Groups[0].HeardAside.Length);
        Assert.Equal(ClaimOutcome.Supported, ReceiverTest.Of([Silent(70), odd with { HeardCovered = false }], asked).Claim);
    }

    [Fact]
    public void NothingIsShownWhereAllRowsAreSetAside()
    {
        ReceiverObservation aside = Silent(70) with { HeardUncovered = false };
        Hertz[] far = [new(433e6), new(183e6)];
        var test = Test([Silent(70), aside, .. far.Select(f => aside with { Frequency = f })]);
        Assert.Equal(far.Order(), test.Unshown);
        Assert.Equal(far.Order(), Test([.. test.Observations, aside with { Frequency = new Hertz(182e6) }]).Unshown);
    }

    /// <summary>A silent station at the larger margin asks for more shielding than the one still heard allows.</summary>
    [Fact]
    public void StationsThatCannotBothBeRightWithdrawEveryClaim()
    {
        StationGroup group = Assert.Single(Test(Heard(50), Silent(65)).Groups);
        Assert.Equal((65.0, 50.0, 15.0),
            (Math.Round(group.Contradiction!.Silent.MarginDb, 9), Math.Round(group.Contradiction.Heard.MarginDb, 9),
            Math.Round(group.Contradiction.DifferenceDb, 9)));
        Assert.Null(group.AtLeast);
        Assert.Null(group.AtMost);
        Assert.Null(group.Interval);
    }

    /// <summary>The difference of two margins with u = 3 each has 3·√2 = 4.24 dB; times 1.645 that is 6.98 dB.</summary>
    [Fact]
    public void WhatChanceExplainsIsNoContradiction()
    {
        Assert.Null(MarginContradiction.Of([Heard(50), Silent(56.9)], Confidence.NinetyFive));
        Assert.NotNull(MarginContradiction.Of([Heard(50), Silent(57.1)], Confidence.NinetyFive));
    }

    [Fact]
    public void WithOneReceiverAndOneSourceTheLeastStepTheWrongWayIsAContradiction()
    {
        ReceiverObservation[] both =
            [.. new[] { Heard(50), Silent(51) }.Select(o => o with { Receiver = "one", Source = "one" })];
        Assert.NotNull(MarginContradiction.Of([.. both], Confidence.NinetyFive));
    }

    [Fact]
    public void WithoutUncertaintiesThereIsNoBoundAndNoClaim()
    {
        var test = ReceiverTest.Of([Silent(70, 0) with { IsUncertaintyStated = false }],
            new ReceiverQuestion { Claim = new Decibels(20) });
        Assert.Null(Assert.Single(test.Groups).AtLeast);
        Assert.Equal(ClaimOutcome.NotShown, test.Claim);
    }

    [Fact]
    public void TheIntervalOfASilentAndAHeardStationHasBothEnds()
    {
        StationGroup group = Assert.Single(Test(Silent(50), Heard(80)).Groups);
        Assert.InRange(group.Interval!.Value.Low, 50 - (1.98 * 3), 50 - (1.95 * 3));
        Assert.InRange(group.Interval.Value.High, 80 + (1.95 * 3), 80 + (1.98 * 3));
    }

    [Fact]
    public void TheNextStationLiesWhereSilentAndHeardAreAboutAsLikely()
    {
        NextStation next = Assert.Single(Test(Silent(50), Heard(90)).Groups).Next!;
        Assert.InRange(next.MarginDb, 66, 74);
        Assert.InRange(next.ShareSilent, 0.4, 0.6);
        Assert.InRange(next.WidthDb, 20, 35);
    }

    /// <summary>Whichever way the next station turns out, tested for real, the interval is on average about as short as
    /// forecast.</summary>
    [Fact]
    public void WhatTheNextStationIsExpectedToLeaveComesTrue()
    {
        NextStation next = Assert.Single(Test(Silent(50), Heard(90)).Groups).Next!;
        double Width(ReceiverObservation more) => Assert.Single(Test(Silent(50), Heard(90), more).Groups).Interval!.Value.Width;
        double after = (next.ShareSilent * Width(Silent(next.MarginDb))) + ((1 - next.ShareSilent) * Width(Heard(next.MarginDb)));
        Assert.Equal(after, next.WidthDb, 0.5);
    }

    [Fact]
    public void OneMoreSilentStationOfTheStatedMarginSupportsTheClaim()
    {
        ReceiverQuestion asked = new() { Claim = new Decibels(60) };
        ImmutableArray<ReceiverObservation> some = [Silent(50), Silent(58)];
        double needed = Assert.Single(ReceiverTest.Of(some, asked).Groups).SupportingMarginDb!.Value;
        Assert.Equal(ClaimOutcome.Supported, ReceiverTest.Of([.. some, Silent(needed)], asked).Claim);
        Assert.Equal(ClaimOutcome.NotShown, ReceiverTest.Of([.. some, Silent(needed - 0.2)], asked).Claim);
    }

    [Fact]
    public void ConstantsAndUnitsGiveHandWorkedLevels()
    {
        // 10·log10(50 Ω · 1 mW) in dBµV is 106.99; 60 dBµV/m less 12 dB/m leaves 48 dBµV.
        Assert.Equal(48 - 106.9897, ReceivedLevel.FromField(60, 12, 2).Dbm, 1e-4);
        // 32.4478 dB + 20·log10(km) + 20·log10(MHz): 1 km at 100 MHz loses 72.4478 dB.
        Assert.Equal(30 + 5 - 72.4478, ReceivedLevel.InFreeSpace(30, 5, 1000, new Hertz(100e6), 6).Dbm, 1e-4);
    }

    /// <summary>5 W at 10 m and 150 MHz to a receiver of 0.25 µV: about 120 dB between the two, as is common practice in the
    /// trade (no source).</summary>
    [Fact]
    public void AStrongTwoWaySignalStandsAbout120DecibelsOverItsReceiversLimit()
    {
        double power = 10 * Math.Log10(5000), sensitivity = (20 * Math.Log10(0.25)) - 106.9897;
        double margin = ReceivedLevel.InFreeSpace(power, 0, 10, new Hertz(150e6), 6).Dbm - sensitivity;
        Assert.InRange(margin, 119.5, 120.5);
    }

    [Fact]
    public void NearerThanAWavelengthOrSurerThanItCanBeThereIsNoFreeSpaceLevel()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ReceivedLevel.InFreeSpace(30, 0, 1.9, new Hertz(150e6), 6));
        Assert.Throws<ArgumentOutOfRangeException>(() => ReceivedLevel.InFreeSpace(30, 0, 10, new Hertz(150e6), 5.9));
    }
}
