namespace SweepStats.Files.Campaigns;

/// <summary>A word that a key may have for its value, and what it means.</summary>
/// <param name="Word">The word as it is written; the case of its letters does not matter.</param>
/// <param name="Value">Its meaning.</param>
internal readonly record struct KeyWord<T>(string Word, T Value);
