using SweepStats.Doubts;

namespace SweepStats.Shielding;

/// <summary>What a reading rests on beside its levels.</summary>
/// <param name="Repeated">Reference and covered sweeps both repeat.</param>
/// <param name="RangeDb">Usable dynamic range; null where no floor is known.</param>
/// <param name="Doubts">What stands against taking it for a value.</param>
/// <param name="BehindPlate">Only for what the noise of the plate sweeps may hide is there no upper end.</param>
internal readonly record struct ReadingSetup(bool Repeated, double? RangeDb, ReadingDoubts Doubts, bool BehindPlate);
