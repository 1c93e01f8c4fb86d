namespace SweepStats.Floor;

/// <summary>Repeats behind a covered mean, as a detection limit takes them.</summary>
/// <param name="Readings">Readings at one frequency.</param>
/// <param name="Units">Units among them that count as repeats, at least 2.</param>
public readonly record struct DetectionRepeats(int Readings, int Units)
{
    /// <summary>Variance of the mean over s²/n: more than 1 where the units go together in the order taken.</summary>
    public double VarianceFactor { get; init; } = 1;

    /// <summary>Degrees of freedom of s².</summary>
    public double DegreesOfFreedom { get; init; } = Units - 1;

    /// <summary>
    /// Whether units differ as a whole, as placements do: then no pooling over frequency tells their scatter better than they
    /// themselves do.
    /// </summary>
    public bool Shared { get; init; }
}
