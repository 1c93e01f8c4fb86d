using System.Collections.Immutable;
using SweepStats.Floor;
using SweepStats.Shielding;

namespace SweepStats.Budgets;

/// <summary>Shielding as a function of what it is computed from: reference, covered and floor mean in dB, then leakage and the stated errors.</summary>
/// <remarks>
/// SE = h(reference, floor) − h(covered, floor) + Σ±error, with h of <see cref="SignalInNoise"/>; without a floor the means as they are. +∞ where the covered mean
/// does not rise over the floor: the signal may be absent. −∞ where the reference does not: nothing is shown then.
/// </remarks>
/// <param name="noise">The detector's noise; null where no floor is taken out.</param>
/// <param name="leaks">An error for what reaches the receiver on another way follows the levels.</param>
/// <param name="errors">The stated errors.</param>
internal sealed class ShieldingModel(DetectorNoise? noise, bool leaks, ImmutableArray<StatedError> errors)
{
    private readonly int _levels = noise is null ? 2 : 3;
    private readonly int _known = (noise is null ? 2 : 3) + (leaks ? 1 : 0);

    public double Shielding(ReadOnlySpan<double> inputs)
    {
        double reference = noise is null ? inputs[0] : SignalInNoise.Level(inputs[0], inputs[2], noise);
        if (double.IsNegativeInfinity(reference))
        {
            return double.NegativeInfinity;
        }

        double shielding = reference - (noise is null ? inputs[1] : SignalInNoise.Level(inputs[1], inputs[2], noise));
        shielding += leaks ? inputs[_levels] : 0;
        for (int i = 0; i < errors.Length; i++)
        {
            shielding += errors[i].Sign * inputs[_known + i];
        }

        return shielding;
    }
}
