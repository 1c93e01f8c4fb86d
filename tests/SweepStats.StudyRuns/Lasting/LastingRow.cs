namespace SweepStats.StudyRuns.Lasting;

/// <summary>What came out of campaigns of one kind. Shares from 0 to 1.</summary>
public sealed record LastingRow
{
    /// <summary>Campaigns.</summary>
    public required int Campaigns { get; init; }

    /// <summary>Share of intervals at a frequency that hold the truth.</summary>
    public required double Held { get; init; }

    /// <summary>Share whose lower end lies above it.</summary>
    public required double ClaimedTooMuch { get; init; }

    /// <summary>Share of intervals that would hold it if all sweeps counted as independent.</summary>
    public required double HeldAsIndependent { get; init; }

    /// <summary>Mean width over that of intervals of independent sweeps.</summary>
    public required double WidthRatio { get; init; }

    /// <summary>Share of campaigns in which sweeps are found to be alike.</summary>
    public required double Found { get; init; }

    /// <summary>
    /// Share of intervals that hold the truth among the campaigns in which that was found; not a number where none.
    /// </summary>
    public required double HeldWhereFound { get; init; }

    /// <summary>Share of campaigns with a warning of it, or in which nine tenths of the intervals hold the truth.</summary>
    public required double ToldOrHeld { get; init; }

    /// <summary>Share of intervals of the mean over the band that hold the truth.</summary>
    public required double BandHeld { get; init; }

    /// <summary>The same if all sweeps counted as independent.</summary>
    public required double BandHeldAsIndependent { get; init; }
}
