using SweepStats.Sweeps;

namespace SweepStats.Files.Proposals;

/// <summary>A role that is guessed, and why.</summary>
/// <param name="Role">The role; null where it is doubtful.</param>
/// <param name="Reason">Why, for a person.</param>
internal sealed record RoleGuess(SweepRole? Role, string Reason);
