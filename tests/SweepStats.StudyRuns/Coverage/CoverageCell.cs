using SweepStats.Sweeps;

namespace SweepStats.StudyRuns.Coverage;

/// <summary>One combination of circumstances in the coverage study.</summary>
/// <param name="Drawn">How the rehearsed receiver averages.</param>
/// <param name="Stated">What the analysis is told of it.</param>
/// <param name="Looks">Looks in a reading.</param>
/// <param name="Sweeps">Floor, reference and covered sweeps, each.</param>
/// <param name="ScatterDb">Standard deviation of the signal from sweep to sweep in dB.</param>
public sealed record CoverageCell(Averaging Drawn, Averaging Stated, double Looks, int Sweeps, double ScatterDb)
{
    /// <summary>Placements of the specimen, each swept as often as stated; 0 where none are named.</summary>
    public int Placements { get; init; }

    /// <summary>Standard deviation in dB of what a placement differs by at a frequency.</summary>
    public double PlacementDb { get; init; }

    /// <summary>Errors that no repeat shows.</summary>
    public StatedErrors Errors { get; init; } = StatedErrors.None;
}
