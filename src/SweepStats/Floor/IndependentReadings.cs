namespace SweepStats.Floor;

/// <summary>How many readings that know nothing of each other stand behind a level of the floor.</summary>
/// <param name="One">Behind the mean at one frequency.</param>
/// <param name="Fewer">
/// How many times fewer than their number stand behind the mean over neighbouring frequencies, which go together; at least 1.
/// </param>
internal readonly record struct IndependentReadings(int One, double Fewer);
