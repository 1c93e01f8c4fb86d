namespace SweepStats.Checks;

/// <summary>A check of the list, and whether the evidence allowed it to be made. Immutable.</summary>
/// <param name="Code">Name of the check, the code of its findings.</param>
/// <param name="UntestedBecause">
/// Why it could not be made, or not wholly, as half a sentence; null where it was made, or found something all the same.
/// </param>
public sealed record CheckRun(string Code, string? UntestedBecause)
{
    /// <summary>
    /// What it could not look at beside the rest, and why, as half a sentence; null where it looked at all or at nothing.
    /// </summary>
    public string? LeftBecause { get; init; }
}
