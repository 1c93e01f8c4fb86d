using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Budgets;

/// <summary>
/// The uncertainty budgets of one specimen: at the frequencies of interest, then of its mean over the band. Immutable.
/// </summary>
public sealed record SpecimenBudgets
{
    private SpecimenBudgets()
    {
    }

    /// <summary>Which specimen.</summary>
    public required SpecimenName Name { get; init; }

    /// <summary>One a frequency of interest, rising; empty where repeats are missing.</summary>
    public required ImmutableArray<ShieldingBudget> Frequencies { get; init; }

    /// <summary>That of the mean over the band; null where repeats are missing or some frequency allows no limit.</summary>
    public required ShieldingBudget? Mean { get; init; }

    /// <summary>All of them.</summary>
    public IEnumerable<ShieldingBudget> All => Mean is { } mean ? Frequencies.Append(mean) : Frequencies;

    /// <summary>Budgets of a specimen.</summary>
    /// <param name="curve">Its shielding.</param>
    /// <param name="band">What holds over the band.</param>
    /// <param name="grid">Analysed frequencies.</param>
    /// <param name="question">What is asked of them.</param>
    public static SpecimenBudgets Of(
        ShieldingCurve curve, BandStatement band, FrequencyGrid grid, BudgetQuestion question)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(band);
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(question);
        if (curve.Levels is not { Repeated: true })
        {
            return new SpecimenBudgets { Name = curve.Name, Frequencies = [], Mean = null };
        }

        ImmutableArray<StatedError> errors = StatedError.Of(question.Uncertainties);
        var reading = new ReadingBudget(curve, errors, question.Confidence);
        return new SpecimenBudgets
        {
            Name = curve.Name,
            Frequencies = [.. BudgetPlaces.Of(curve, grid, question.Frequencies, question.Requirement).Select(reading.At)],
            Mean = MeanBudget.Of(curve, band, errors, question.Confidence),
        };
    }
}
