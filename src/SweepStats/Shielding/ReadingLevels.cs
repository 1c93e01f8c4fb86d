using SweepStats.Leakage;
using SweepStats.Uncertainty;

namespace SweepStats.Shielding;

/// <summary>All that goes into the shielding at one frequency.</summary>
/// <param name="Reference">Reference level.</param>
/// <param name="Covered">Covered level.</param>
/// <param name="Floor">Floor level; −∞ where none is known.</param>
/// <param name="TypeB">Uncertainty that repeats do not show, of the difference.</param>
internal readonly record struct ReadingLevels(RepeatedLevel Reference, RepeatedLevel Covered, RepeatedLevel Floor,
    SystematicError TypeB)
{
    /// <summary>What may stand beside the signal as a steady voltage of unknown phase.</summary>
    public LeakageLevel Leakage { get; init; } = LeakageLevel.None;
}
