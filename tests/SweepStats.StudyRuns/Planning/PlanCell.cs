namespace SweepStats.StudyRuns.Planning;

/// <summary>A set-up whose plan is held against rehearsed campaigns.</summary>
/// <param name="Looks">Looks averaged in a reading.</param>
/// <param name="ScatterDb">Standard deviation of a point of a sweep in dB, beside noise.</param>
/// <param name="PlacementDeviationDb">Standard deviation between placements in dB.</param>
/// <param name="Placements">Placements; 0 leaves them unnamed.</param>
/// <param name="Sweeps">Sweeps of each placement, or of the specimen.</param>
/// <param name="ReferenceSweeps">Reference sweeps.</param>
/// <param name="MarginDb">How much more than the claim the specimen shields.</param>
public sealed record PlanCell(
    double Looks, double ScatterDb, double PlacementDeviationDb, int Placements, int Sweeps, int ReferenceSweeps,
    double MarginDb);
