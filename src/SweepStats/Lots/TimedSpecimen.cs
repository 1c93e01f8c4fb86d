namespace SweepStats.Lots;

/// <summary>Mean shielding of one specimen, and when it was measured.</summary>
/// <param name="Lot">Its lot.</param>
/// <param name="Specimen">Its name.</param>
/// <param name="TakenAt">When its first sweep was taken; null where not noted.</param>
/// <param name="MeanDb">In dB.</param>
internal readonly record struct TimedSpecimen(string Lot, string Specimen, DateTimeOffset? TakenAt, double MeanDb)
{
    /// <summary>By time where all have one, else as they come.</summary>
    public static TimedSpecimen[] InOrder(IReadOnlyList<TimedSpecimen> specimens) =>
        specimens.All(p => p.TakenAt is not null) ? [.. specimens.OrderBy(p => p.TakenAt)] : [.. specimens];
}
