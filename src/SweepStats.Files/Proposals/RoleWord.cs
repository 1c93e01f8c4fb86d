using SweepStats.Sweeps;

namespace SweepStats.Files.Proposals;

/// <summary>A word of a name that tells a role.</summary>
/// <param name="At">Its first token.</param>
/// <param name="Length">Tokens that it takes.</param>
/// <param name="Role">The role.</param>
/// <param name="Text">As written.</param>
internal sealed record RoleWord(int At, int Length, SweepRole Role, string Text);
