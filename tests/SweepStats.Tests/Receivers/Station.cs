using System.Collections.Immutable;
using SweepStats.Quantities;
using SweepStats.Receivers;

namespace SweepStats.Tests.Receivers;

/// <summary>Observations for tests.</summary>
internal static class Station
{
    public static ReceiverObservation Silent(double margin, double u = 3) => At(margin, u, heard: false);

    public static ReceiverObservation Heard(double margin, double u = 3) => At(margin, u, heard: true);

    public static ReceiverTest Test(params ReceiverObservation[] observations) =>
        ReceiverTest.Of([.. observations], new ReceiverQuestion());

    public static double? AtLeast(params ReceiverObservation[] observations) => MarginBound.AtLeast([.. observations], 0.95);

    public static double? AtMost(params ReceiverObservation[] observations) => MarginBound.AtMost([.. observations], 0.95);

    /// <summary>The same station with one receiver for all.</summary>
    public static ImmutableArray<ReceiverObservation> WithOneReceiver(params IEnumerable<ReceiverObservation> observations) =>
        [.. observations.Select(o => o with { Receiver = "one" })];

    private static ReceiverObservation At(double margin, double u, bool heard) => new()
    {
        Name = FormattableString.Invariant($"{margin} dB"),
        Frequency = new Hertz(145e6),
        Level = new ReceivedLevel(margin - 110, u * 0.8, LevelOrigin.Level),
        SensitivityDbm = -110,
        SensitivityUncertaintyDb = u * 0.6,
        HeardUncovered = true,
        HeardCovered = heard,
    };
}
