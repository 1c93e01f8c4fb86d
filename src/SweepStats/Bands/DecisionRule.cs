using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Bands;

/// <summary>
/// What is asked, and how sure a statement about it has to be. Immutable. Source: JCGM 106:2012, 8 (decision rules with a guard
/// band).
/// </summary>
/// <remarks>
/// "Meets" needs the one-sided lower limit at or above the acceptance limit, which is the requirement and the guard band; "fails"
/// the one-sided upper limit below the requirement itself. At a level of 0.5 without a guard band both limits are the measured
/// value: simple acceptance, with a shared risk.
/// </remarks>
/// <param name="Requirement">Shielding asked for.</param>
/// <param name="Level">One-sided level of either statement, 0.5 or more.</param>
/// <param name="GuardBand">How far the lower limit has to lie above the requirement, not negative.</param>
public sealed record DecisionRule(Requirement Requirement, Confidence Level, Decibels GuardBand)
{
    /// <summary>The measured value alone decides, whatever its uncertainty.</summary>
    public bool IsSimpleAcceptance => Level.Level <= 0.5;

    /// <summary>What the lower limit has to reach at a frequency; null where nothing is asked.</summary>
    public Decibels? AcceptanceLimit(Hertz frequency) =>
        Requirement.At(frequency) is { } asked ? new Decibels(asked.Value + GuardBand.Value) : null;

    /// <summary>Whether a reading is shown to meet what is asked there; null where nothing is asked.</summary>
    /// <remarks>
    /// Where only a bound is known there is no measured value to accept, so the bound that is printed has to reach the limit too:
    /// noise below its own mean would otherwise "meet" anything at a level of 0.5.
    /// </remarks>
    internal bool? IsMet(ShieldingReading reading, double lowerLimitDb) =>
        AcceptanceLimit(reading.Evidence.At) is not { } limit ? null
        : reading.Evidence.OneSidedLow is { } bound && lowerLimitDb >= limit.Value
            && (reading is ShieldingReading.Measured || bound >= limit);
}
