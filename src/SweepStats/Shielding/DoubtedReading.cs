using SweepStats.Doubts;
using SweepStats.Quantities;

namespace SweepStats.Shielding;

/// <summary>What is left of a reading that cannot be a value: a bound from below where one holds, else nothing.</summary>
/// <remarks>
/// A clipped reference reads too low, noise taken for a signal reads too high and a covered level that the display cuts off from
/// below reads too high: in each case the shielding is at least what is shown. A covered level clipped from above reads too low,
/// and no lower bound holds. A receiver that falls short does so more the higher the level is, whatever its law: differences are
/// shown too small, so that the covered level, where it falls short too, leaves the bound in place as long as it is the lower
/// one. Where the bound lies below 0 dB it may not be, and a negative difference shown too small is no bound. Noise is not taken
/// out where it is not known to be the floor's.
/// </remarks>
internal static class DoubtedReading
{
    /// <summary>The reading; null where nothing stands against a value.</summary>
    public static ShieldingReading? Of(ReadingEvidence evidence, EnvelopeLimits limits)
    {
        if (evidence.Doubts == ReadingDoubts.None)
        {
            return null;
        }

        bool reference = evidence.Doubts.HasFlag(ReadingDoubts.ReferenceOverloaded);
        bool covered = evidence.Doubts.HasFlag(ReadingDoubts.CoveredOverloaded);
        ShieldingState state = reference || covered ? ShieldingState.Overloaded
            : evidence.FloorDb is null ? ShieldingState.NoFloor : ShieldingState.Capped;
        return covered ? Nothing(state, evidence,
            "The receiver is overloaded by the covered level, so the shielding may be less than any figure from it.")
            : !double.IsFinite(limits.LowDb) ? Nothing(state, evidence,
                "The reference does not rise clearly over the floor, so not even a lower bound can be had.")
            : reference && limits.LowDb < 0
            ? Nothing(state, evidence, "The receiver is overloaded, and the covered level may be as high as the reference, so "
                + "the shielding may be less than any figure from them.")
            : new ShieldingReading.AtLeast(state, evidence, new Decibels(limits.LowDb));
    }

    private static ShieldingReading.Unreadable Nothing(ShieldingState state, ReadingEvidence evidence, string reason) =>
        new(state, evidence with { OneSidedLow = null }, reason);
}
