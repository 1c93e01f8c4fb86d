namespace SweepStats.Files.Proposals;

/// <summary>When a sweep was taken, as it is guessed, and why.</summary>
/// <param name="At">The time; null where nothing tells it.</param>
/// <param name="Reason">Why, for a person.</param>
internal sealed record TimeGuess(DateTimeOffset? At, string Reason);
