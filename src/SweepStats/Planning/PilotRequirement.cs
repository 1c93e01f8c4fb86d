using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Shielding;

namespace SweepStats.Planning;

/// <summary>What a pilot's requirement asks for where its specimens have least to spare.</summary>
/// <param name="At">The frequency.</param>
/// <param name="Required">The requirement there.</param>
/// <param name="GuardBand">How far the lower limit has to lie above it.</param>
public sealed record PilotRequirement(Hertz At, Decibels Required, Decibels GuardBand)
{
    /// <summary>What has to be claimed in dB.</summary>
    public double ClaimDb => Required.Value + GuardBand.Value;

    /// <summary>
    /// Where the one-sided lower limit lies least above what is asked, or most below; null where nothing is asked.
    /// </summary>
    /// <remarks>
    /// A frequency without a limit has shown nothing yet and comes first; of several the one that most is asked of.
    /// </remarks>
    /// <param name="curves">Shielding of the pilot's specimens.</param>
    /// <param name="rule">The requirement; null where none is stated.</param>
    public static PilotRequirement? Of(ImmutableArray<ShieldingCurve> curves, DecisionRule? rule) => rule is null ? null : curves
        .SelectMany(curve => curve.Readings)
        .Select(reading => (reading.Evidence, Required: rule.Requirement.At(reading.Evidence.At)))
        .Where(asked => asked.Required is not null)
        .OrderBy(asked =>
            asked.Evidence.OneSidedLow is { } low ? low.Value - asked.Required!.Value.Value : double.NegativeInfinity)
        .ThenByDescending(asked => asked.Required!.Value.Value)
        .Select(asked => new PilotRequirement(asked.Evidence.At, asked.Required!.Value, rule.GuardBand))
        .FirstOrDefault();
}
