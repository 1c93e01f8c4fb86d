using SweepStats.Quantities;

namespace SweepStats.Rehearsal;

/// <summary>Something that transmits whether the source is on or off.</summary>
/// <param name="Frequency">Where; the nearest point of the grid takes it.</param>
/// <param name="AboveFloor">Its level over the noise power.</param>
/// <param name="Share">
/// Chance that a sweep sees it, 0 to 1; 1 for one that never pauses. A sweep sees all of it or nothing.
/// </param>
public sealed record AmbientCarrier(Hertz Frequency, Decibels AboveFloor, double Share = 1);
