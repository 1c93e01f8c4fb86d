using SweepStats.Shielding;

namespace SweepStats.Budgets;

/// <summary>
/// Shielding as a function of what it is computed from: reference, covered and floor mean in dB, then leakage and the stated
/// errors.
/// </summary>
/// <remarks>
/// SE = h(reference, floor) − h(covered, floor) + Σ±error, with h of the law (<see cref="SignalInNoise"/> where looks are
/// averaged); without a floor the means as they are. +∞ where the covered mean
/// does not rise over the floor: the signal may be absent. −∞ where the reference does not: nothing is shown then.
/// </remarks>
/// <param name="law">How the noise is taken out; null where no floor is.</param>
/// <param name="leaks">An error for what reaches the receiver on another way follows the levels.</param>
/// <param name="errors">The stated errors.</param>
internal sealed class ShieldingModel(ILevelLaw? law, bool leaks, ImmutableArray<StatedError> errors)
{
    private readonly int _levels = law is null ? 2 : 3;
    private readonly int _known = (law is null ? 2 : 3) + (leaks ? 1 : 0);

    /// <summary>Shielding in dB from reference, covered, floor if one is, leakage if it leaks, errors, in this order.</summary>
    public double Shielding(ReadOnlySpan<double> inputs)
    {
        double reference = law is null ? inputs[0] : law.Reference(inputs[0], inputs[2]);
        if (double.IsNegativeInfinity(reference))
        {
            return double.NegativeInfinity;
        }

        double shielding = reference - (law is null ? inputs[1] : law.Covered(inputs[1], inputs[2]));
        shielding += leaks ? inputs[_levels] : 0;
        for (int i = 0; i < errors.Length; i++)
        {
            shielding += errors[i].Sign * inputs[_known + i];
        }

        return shielding;
    }
}
