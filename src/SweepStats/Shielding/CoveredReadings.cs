namespace SweepStats.Shielding;

/// <summary>What is known of the covered readings at every frequency alike.</summary>
/// <param name="Count">Readings at one frequency.</param>
/// <param name="Units">Independent units among them.</param>
/// <param name="SignalDeviationDb">
/// Scatter of the signal from one unit to the next in dB, as the reference shows it far above the floor; 0 where unknown.
/// </param>
internal readonly record struct CoveredReadings(int Count, int Units, double SignalDeviationDb);
