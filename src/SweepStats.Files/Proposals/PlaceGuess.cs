namespace SweepStats.Files.Proposals;

/// <summary>Lot, specimen and placement of a covered sweep as they are guessed.</summary>
/// <param name="Specimen">The specimen; null where it is doubtful.</param>
/// <param name="Reason">Why, for a person.</param>
internal sealed record PlaceGuess(string? Specimen, string Reason)
{
    /// <summary>The lot; null for the only one.</summary>
    public string? Lot { get; init; }

    /// <summary>The placement; null where no name tells one.</summary>
    public string? Placement { get; init; }

    /// <summary>What to fill in; null where nothing is doubtful.</summary>
    public string? ToFillIn { get; init; }
}
