using SweepStats.Uncertainty;

namespace SweepStats.Shielding;

/// <summary>What a curve's figures over a band take from elsewhere than its own repeats.</summary>
/// <param name="TypeB">What no repeat shows.</param>
/// <param name="AveragingDb">
/// How far the shielding may lie to either side for not knowing how the receiver averages, at each frequency.
/// </param>
/// <param name="ReferenceSlopes">
/// How much the reference signal moves for each dB of its level, at each frequency: the same for all specimens.
/// </param>
internal sealed record KnownErrors(SystematicError TypeB, double[] AveragingDb, double[] ReferenceSlopes);
