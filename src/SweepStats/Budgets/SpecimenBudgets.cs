using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

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
    /// <param name="choices">
    /// Stated errors, frequencies of interest (each is taken to the nearest analysed one; none: where the claim is weakest),
    /// requirement, level.
    /// </param>
    public static SpecimenBudgets Of(
        ShieldingCurve curve, BandStatement band, FrequencyGrid grid,
        (ImmutableArray<UncertaintyEntry> Uncertainties, ImmutableArray<Hertz> Frequencies, Requirement? Requirement,
            Confidence Confidence) choices)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(band);
        ArgumentNullException.ThrowIfNull(grid);
        if (curve.Levels is not { Repeated: true })
        {
            return new SpecimenBudgets { Name = curve.Name, Frequencies = [], Mean = null };
        }

        ImmutableArray<StatedError> errors = StatedError.Of(choices.Uncertainties);
        var reading = new ReadingBudget(curve, errors, choices.Confidence);
        return new SpecimenBudgets
        {
            Name = curve.Name,
            Frequencies = [.. BudgetPlaces.Of(curve, grid, choices.Frequencies, choices.Requirement).Select(reading.At)],
            Mean = MeanBudget.Of(curve, band, errors, choices.Confidence),
        };
    }
}
