using SweepStats.Doubts;
using SweepStats.Quantities;

namespace SweepStats.Shielding;

/// <summary>What is left of a reading that cannot be a value: a bound from below where one holds, else nothing.</summary>
/// <remarks>
/// A clipped reference reads too low, noise taken for a signal reads too high and a covered level that the display cuts off from below reads too high: in each
/// case the shielding is at least what is shown. A covered level clipped from above reads too low, and no lower bound holds.
/// Noise is not taken out where it is not known to be the floor's.
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

        bool overloaded = evidence.Doubts.HasFlag(ReadingDoubts.ReferenceOverloaded) || evidence.Doubts.HasFlag(ReadingDoubts.CoveredOverloaded);
        ShieldingState state = overloaded ? ShieldingState.Overloaded : evidence.FloorDb is null ? ShieldingState.NoFloor : ShieldingState.Capped;
        return evidence.Doubts.HasFlag(ReadingDoubts.CoveredOverloaded)
            ? new ShieldingReading.Unreadable(state, evidence with { OneSidedLow = null }, "The covered level is at the top of what the receiver shows, so the shielding may be less than any figure from it.")
            : double.IsFinite(limits.LowDb)
            ? new ShieldingReading.AtLeast(state, evidence, new Decibels(limits.LowDb))
            : new ShieldingReading.Unreadable(state, evidence, "The reference does not rise clearly over the floor, so not even a lower bound can be had.");
    }
}
