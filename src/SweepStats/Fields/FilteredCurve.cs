using System.Numerics;

namespace SweepStats.Fields;

/// <summary>A curve that a pulse is sent through, at the frequencies of a <see cref="PulseGrid"/>.</summary>
/// <param name="AttenuationDb">Shielding in dB at each frequency.</param>
/// <param name="Turns">Phase as a number of size 1, zero where none is known and the minimum phase stands in; null where it does
/// everywhere.</param>
internal sealed record FilteredCurve(double[] AttenuationDb, Complex[]? Turns = null);
