using SweepStats.Verdicts;

namespace SweepStats.Trends;

/// <summary>The specimens at one value of the ordered factor.</summary>
/// <param name="Value">The value.</param>
/// <param name="Specimens">How many.</param>
/// <param name="MeanDb">Their mean shielding over the clear part of the whole band in dB; not a number where no part is
/// clear.</param>
/// <param name="Outcome">How the mean of such specimens stands to the requirement at every frequency, taken by itself; null where
/// nothing is asked or told.</param>
public readonly record struct FactorGroup(double Value, int Specimens, double MeanDb, RequirementOutcome? Outcome);
