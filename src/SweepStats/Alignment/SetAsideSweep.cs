namespace SweepStats.Alignment;

/// <summary>A sweep that is no part of the shielding, on the campaign's grid.</summary>
/// <param name="Sweep">The sweep as read.</param>
/// <param name="Levels">Its levels in dB on the campaign's scale, one a frequency.</param>
/// <param name="Phases">Its phases in degrees; empty where it carries none.</param>
internal sealed record SetAsideSweep(Sweeps.Sweep Sweep, ImmutableArray<double> Levels, ImmutableArray<double> Phases);
