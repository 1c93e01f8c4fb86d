using SweepStats.Quantities;

namespace SweepStats.Verdicts;

/// <summary>How the shielding at one frequency stands to what is asked there, taken by itself.</summary>
/// <param name="At">Frequency.</param>
/// <param name="Required">Shielding asked for.</param>
/// <param name="Outcome">How it stands; not corrected for the number of frequencies looked at.</param>
/// <param name="Probability">How probably it conforms; null where nothing can be said.</param>
public sealed record FrequencyDecision(Hertz At, Decibels Required, RequirementOutcome Outcome,
    ConformanceProbability? Probability)
{
    /// <summary>
    /// Code of the finding that could overturn what the figures say, so that it cannot be told; null where none could.
    /// </summary>
    public string? OverturnedBy { get; init; }
}
