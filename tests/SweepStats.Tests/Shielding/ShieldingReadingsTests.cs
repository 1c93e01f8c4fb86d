using SweepStats.Doubts;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using Xunit;

namespace SweepStats.Tests.Shielding;

public sealed class ShieldingReadingsTests
{
    private static readonly ReadingEvidence Evidence = new()
    {
        At = new Hertz(30e6),
        ReferenceDb = -20.25,
        CoveredDb = -60.5,
        FloorDb = -100,
        LeakageDb = -90,
        DynamicRange = new Decibels(70),
        StandardUncertaintyDb = 0.25,
        DegreesOfFreedom = double.PositiveInfinity,
        OneSidedLow = new Decibels(39),
        Ambient = true,
        HiddenByFloor = true,
        HiddenBehindPlate = true,
        Doubts = ReadingDoubts.ReferenceOverloaded | ReadingDoubts.FloorMoved,
        ReferenceInFloor = true,
    };

    private static readonly ReadingEvidence Unknown = new()
    {
        At = new Hertz(31e6),
        ReferenceDb = -20,
        CoveredDb = -50,
        FloorDb = null,
        DynamicRange = null,
        StandardUncertaintyDb = null,
        DegreesOfFreedom = null,
        OneSidedLow = null,
        Ambient = false,
        ReferenceInFloor = false,
    };

    private static ShieldingReading.Measured Measured(Confidence confidence, ReadingEvidence? evidence = null) => new(
        ShieldingState.NearFloor, evidence ?? Evidence,
        new ShieldingEstimate(new Decibels(40.25), new Decibels(39), new Decibels(double.PositiveInfinity), confidence));

    [Fact]
    public void MoreReasonsThanHaveRoomAreRefusedInASentence()
    {
        ShieldingReading[] Given(int reasons) => [.. Enumerable.Range(0, reasons)
            .Select(i => new ShieldingReading.Unreadable(ShieldingState.Overloaded, Evidence, $"reason {i}"))];
        ShieldingReading[] most = Given(ReadingMark.MostReasons);

        Assert.Equal(most, ShieldingReadings.Of(most));
        Assert.Contains("different texts", Assert.Throws<ArgumentException>(
            () => ShieldingReadings.Of(Given(ReadingMark.MostReasons + 1))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryKindComesOutAsItWentIn()
    {
        ShieldingReading[] given =
        [
            Measured(Confidence.NinetyFive),
            Measured(Confidence.NinetyFive, Evidence with { Ambient = false }),
            Measured(Confidence.NinetyFive, Evidence with { ReferenceInFloor = false }),
            Measured(Confidence.NinetyFive, Evidence with { HiddenByFloor = false }),
            Measured(Confidence.NinetyFive, Evidence with { HiddenBehindPlate = false }),
            new ShieldingReading.AtLeast(ShieldingState.Capped, Unknown, new Decibels(34.125)),
            new ShieldingReading.Unrepeated(ShieldingState.NoFloor, Unknown, new Decibels(-3)),
            new ShieldingReading.Unreadable(ShieldingState.Overloaded, Evidence, "one reason"),
            new ShieldingReading.Unreadable(ShieldingState.Clear, Unknown, "another"),
        ];

        ShieldingReadings kept = [.. given];

        Assert.Equal(given, kept);
        Assert.Equal(given.Select(r => r.ValueOrBound.Value), kept.ValuesDb.ToArray());
        Assert.Equal(given.Select(r => r.ValueOrBound.Bound), Enumerable.Range(0, kept.Length).Select(kept.IsBound));
        Assert.Equal(given.Where(r => r.State is not (ShieldingState.Clear or ShieldingState.NearFloor)), kept.Bounded());
        Assert.Equal(1, kept.Counted(ShieldingState.Capped));
    }

    [Fact]
    public void IntervalsOfOneSpecimenHaveOneConfidence()
    {
        ShieldingReading[] given = [Measured(Confidence.NinetyFive), Measured(new(0.9))];

        string told = Assert.Throws<ArgumentException>(() => ShieldingReadings.Of(given)).Message;

        Assert.Contains("point 2", told, StringComparison.Ordinal);
    }
}
