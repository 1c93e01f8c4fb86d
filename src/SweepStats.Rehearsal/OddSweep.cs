using SweepStats.Sweeps;

namespace SweepStats.Rehearsal;

/// <summary>A sweep that differs from its repeats: a cable was touched, a door stood open.</summary>
/// <remarks>
/// The offset is the same at all frequencies. The shape is a standing wave: a sine of three periods over the logarithm of
/// frequency, with a phase of its own. Both act on the signal; in a floor sweep, which has none, on the displayed noise.
/// </remarks>
/// <param name="Role">Which kind of sweep.</param>
/// <param name="Number">Which of its role, from 1, in the order of the campaign.</param>
/// <param name="OffsetDb">How far the whole sweep is off, in dB.</param>
/// <param name="ShapeDb">Root mean square of the standing wave in dB, not negative.</param>
public sealed record OddSweep(SweepRole Role, int Number, double OffsetDb = 0, double ShapeDb = 0);
