namespace SweepStats.Alignment;

/// <summary>How sweeps on other frequencies were brought onto those of the covered sweeps. Immutable.</summary>
public sealed record Interpolation
{
    /// <summary>Name of the error in budgets.</summary>
    public const string ErrorName = "interpolation between measured frequencies";

    /// <summary>Frequencies at which levels may be farther off than this are left out, in dB.</summary>
    public const double LargestDb = 1;

    /// <summary>Sweeps with a frequency at which they have no reading of their own.</summary>
    public required int SweepCount { get; init; }

    /// <summary>How far the difference of reference and covered level may be off for it at most, in dB.</summary>
    public required double HalfWidthDb { get; init; }

    /// <summary>
    /// Covered frequencies that are not analysed: outside the range of other sweeps, or where levels bend by too much between
    /// readings.
    /// </summary>
    public required int FrequenciesLeftOut { get; init; }

    /// <summary>Whether covered sweeps were taken on several grids, so that specimens differ in this error.</summary>
    public required bool BetweenSpecimens { get; init; }
}
