using SweepStats.Sweeps;

namespace SweepStats.Rehearsal.Coverage;

/// <summary>One combination of circumstances in the coverage study.</summary>
/// <param name="Drawn">How the rehearsed receiver averages.</param>
/// <param name="Stated">What the analysis is told of it.</param>
/// <param name="Looks">Looks in a reading.</param>
/// <param name="Sweeps">Floor, reference and covered sweeps, each.</param>
/// <param name="ScatterDb">Standard deviation of the signal from sweep to sweep in dB.</param>
public sealed record CoverageCell(Averaging Drawn, Averaging Stated, double Looks, int Sweeps, double ScatterDb);
