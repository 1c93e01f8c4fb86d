using SweepStats.Statistics;

namespace SweepStats.Fields;

/// <summary>Which pulse is sent through the measured curves, and what is assumed where nothing was measured. Immutable.</summary>
public sealed record PulseQuestion
{
    /// <summary>The pulse in front of the specimen.</summary>
    public DoubleExponential Pulse { get; init; } = DoubleExponential.EarlyTime;

    /// <summary>The assumption that the answer begins with; the others always stand beside it.</summary>
    public OutsideBand Outside { get; init; } = OutsideBand.None;

    /// <summary>Level of the limits.</summary>
    public Confidence Confidence { get; init; } = Confidence.NinetyFive;

    /// <summary>Whether the campaign states a pulse of its own.</summary>
    public bool IsOwn => Pulse != DoubleExponential.EarlyTime;
}
