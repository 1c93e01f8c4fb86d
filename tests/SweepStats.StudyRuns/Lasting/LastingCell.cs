namespace SweepStats.StudyRuns.Lasting;

/// <summary>
/// A kind of campaign whose sweeps resemble those before them; the reference is swept first, then the specimen, without a pause.
/// </summary>
/// <param name="Kind">What goes over from sweep to sweep.</param>
/// <param name="Sweeps">Sweeps of reference and of the specimen, each.</param>
/// <param name="Strength">
/// Correlation of one sweep with the next; of a standing wave how far it moves over the sweeps of one role, against what is each
/// sweep's own, as standard deviations.
/// </param>
public sealed record LastingCell(LastingKind Kind, int Sweeps, double Strength)
{
    /// <summary>Frequencies.</summary>
    public int Points { get; init; } = 101;

    /// <summary>Standard deviation of a sweep at a frequency in dB.</summary>
    public double ScatterDb { get; init; } = 0.5;
}
