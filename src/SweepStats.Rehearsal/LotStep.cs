using SweepStats.Quantities;

namespace SweepStats.Rehearsal;

/// <summary>
/// A stretch of frequencies in which all specimens of a lot shield more, or less, than elsewhere: another weave, a worn coating.
/// </summary>
/// <param name="Lot">Which lot: A, B and so on.</param>
/// <param name="Change">By how much; below 0 where they shield less.</param>
/// <param name="Band">Where. The change is whole at every frequency within, ends included, and none outside.</param>
public sealed record LotStep(string Lot, Decibels Change, FrequencyBand Band);
