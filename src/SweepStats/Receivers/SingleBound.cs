using SweepStats.Statistics;

namespace SweepStats.Receivers;

/// <summary>What one observation shows alone, one-sided: M − z·u at least where silent, M + z·u at most where heard; neither
/// where it is no evidence or has no uncertainty. Immutable.</summary>
/// <param name="AtLeastDb">Lower bound of the shielding in dB.</param>
/// <param name="AtMostDb">Upper bound in dB.</param>
public readonly record struct SingleBound(double? AtLeastDb, double? AtMostDb)
{
    /// <summary>The bound of an observation.</summary>
    public static SingleBound Of(ReceiverObservation observation, Confidence confidence)
    {
        ArgumentNullException.ThrowIfNull(observation);
        return observation.State != EvidenceState.Counts || !observation.IsUncertaintyStated ? default
            : new SingleBound(MarginBound.AtLeast([observation], confidence.Level),
                MarginBound.AtMost([observation], confidence.Level));
    }
}
