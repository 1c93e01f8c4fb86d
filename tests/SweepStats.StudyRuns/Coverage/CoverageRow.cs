namespace SweepStats.StudyRuns.Coverage;

/// <summary>What came out at one signal-to-noise ratio of a cell.</summary>
public sealed record CoverageRow
{
    /// <summary>Signal-to-noise ratio of the covered signal in dB, middle of a bin 1 dB wide.</summary>
    public required double SnrDb { get; init; }

    /// <summary>Readings judged.</summary>
    public required int Trials { get; init; }

    /// <summary>Readings whose interval or bound holds the truth.</summary>
    public required int Held { get; init; }

    /// <summary>Readings whose lower end lies above the truth: claims that are too high.</summary>
    public required int ClaimedTooMuch { get; init; }

    /// <summary>Readings that are bounded from below only.</summary>
    public required int Bounds { get; init; }

    /// <summary>Readings whose dynamic range, as stated, reaches the truth.</summary>
    public required int WithinRange { get; init; }

    /// <summary>Readings for which a plain Welch t interval on the raw levels holds the truth.</summary>
    public required int PlainHeld { get; init; }

    /// <summary>Mean of our width over the plain width, two-sided intervals only; not a number where there are none.</summary>
    public required double WidthRatio { get; init; }

    /// <summary>Readings whose upper end lies below the truth: claims that are too low.</summary>
    public int ClaimedTooLittle => Trials - Held - ClaimedTooMuch;

    /// <summary>Share that holds the truth.</summary>
    public double Coverage => (double)Held / Trials;

    /// <summary>Share of plain intervals that hold the truth.</summary>
    public double PlainCoverage => (double)PlainHeld / Trials;
}
