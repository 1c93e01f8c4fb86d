using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Budgets;

/// <summary>What budgets are drawn up of. Immutable.</summary>
/// <param name="Uncertainties">Stated errors.</param>
/// <param name="Frequencies">
/// Frequencies of interest, each of which is taken to the nearest analysed one; where there are none, that at which the claim is
/// weakest is taken.
/// </param>
/// <param name="Requirement">Shielding asked for; null for none.</param>
/// <param name="Confidence">Level of the intervals.</param>
public sealed record BudgetQuestion(
    ImmutableArray<UncertaintyEntry> Uncertainties, ImmutableArray<Hertz> Frequencies, Requirement? Requirement,
    Confidence Confidence);
