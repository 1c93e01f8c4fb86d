namespace SweepStats.Lots;

/// <summary>Mean shielding of one piece, and when it was measured.</summary>
/// <param name="Lot">Its lot.</param>
/// <param name="Specimen">Its name.</param>
/// <param name="TakenAt">When its first sweep was taken; null where not noted.</param>
/// <param name="MeanDb">In dB.</param>
internal readonly record struct TimedPiece(string Lot, string Specimen, DateTimeOffset? TakenAt, double MeanDb)
{
    /// <summary>By time where all have one, else as they come.</summary>
    public static TimedPiece[] InOrder(IReadOnlyList<TimedPiece> pieces) =>
        pieces.All(p => p.TakenAt is not null) ? [.. pieces.OrderBy(p => p.TakenAt)] : [.. pieces];
}
