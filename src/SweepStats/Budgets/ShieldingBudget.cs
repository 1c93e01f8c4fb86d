using SweepStats.Doubts;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;
using SweepStats.Uncertainty;

namespace SweepStats.Budgets;

/// <summary>
/// Where the uncertainty of one specimen's shielding comes from, at one frequency or of its mean over the band. Immutable.
/// </summary>
/// <remarks>
/// The linear budget of JCGM 100: it belongs to the combined standard uncertainty and its degrees of freedom, as shielding.csv
/// reports them. The interval that the report names beside it keeps the bend of the noise correction; <see cref="Propagate"/>
/// shows where the two part.
/// </remarks>
public sealed record ShieldingBudget
{
    // Two sums of the same parts differ by rounding.
    private const double SameFreedom = 1e-9;

    private readonly MeasurementModel _model;
    private readonly ImmutableArray<InputQuantity> _inputs;

    /// <param name="model">The result as a function of its inputs.</param>
    /// <param name="inputs">The inputs.</param>
    /// <param name="lines">What each of them is, in their order; sensitivities and shares are filled in here.</param>
    /// <param name="sloped">Whether the result has a slope at the estimates.</param>
    /// <param name="usualFreedom">Degrees of freedom at the scatter usual around the frequency; no more are taken.</param>
    internal ShieldingBudget(
        MeasurementModel model, ImmutableArray<InputQuantity> inputs, ImmutableArray<UncertaintyLine> lines, bool sloped,
        double usualFreedom = double.PositiveInfinity)
    {
        (_model, _inputs) = (model, inputs);
        LinearBudget? ofLines = sloped ? LinearBudget.Of(model, inputs) : null;
        ByUsualScatter = ofLines?.DegreesOfFreedom > usualFreedom * (1 + SameFreedom);
        Linear = ofLines is not null && ByUsualScatter ? ofLines with { DegreesOfFreedom = usualFreedom } : ofLines;
        Lines = Linear is { } linear
            ? [.. lines.Select((line, i) => Filled(line, linear.Lines[i], linear.StandardUncertainty))] : lines;
    }

    /// <summary>Which specimen.</summary>
    public required SpecimenName Name { get; init; }

    /// <summary>The frequency; null for the mean over the band.</summary>
    public required Hertz? At { get; init; }

    /// <summary>Level of the intervals.</summary>
    public required Confidence Confidence { get; init; }

    /// <summary>The interval that the report names; the upper end is infinite where only a bound is known.</summary>
    public required Interval Reported { get; init; }

    /// <summary>Independent covered repeats are placements, not sweeps.</summary>
    public required bool ByPlacement { get; init; }

    /// <summary>What stands against the reading: with a doubt there is only a bound, and no linear budget of a value.</summary>
    public ReadingDoubts Doubts { get; init; }

    /// <summary>
    /// Several ways of averaging, or places of a declared floor, have to be reckoned with; the budget is for the one with the
    /// largest uncertainty.
    /// </summary>
    public bool LargestOfSeveral { get; init; }

    /// <summary>The leakage in it shows nowhere: it is what the noise of the plate sweeps may hide.</summary>
    public bool LeakageBehindPlate { get; init; }

    /// <summary>
    /// How far the mean may lie to either side for not knowing how the receiver averages, in dB: added to the interval as it is,
    /// since it is no scatter.
    /// </summary>
    public double AveragingShiftDb { get; init; }

    /// <summary>What the uncertainty is made of.</summary>
    public ImmutableArray<UncertaintyLine> Lines { get; }

    /// <summary>
    /// The linear budget; null where the covered level does not rise over the floor, or something stands against the reading, so
    /// that there is no estimate to have one.
    /// </summary>
    public LinearBudget? Linear { get; }

    /// <summary>
    /// The degrees of freedom are fewer than those of the lines by Welch–Satterthwaite: they are those at the scatter usual
    /// around the frequency. Few repeats that happen to agree at one frequency show no more than their neighbours do.
    /// </summary>
    public bool ByUsualScatter { get; }

    /// <summary>Coverage factor times combined standard uncertainty, in dB; null without a linear budget.</summary>
    public double? ExpandedUncertaintyDb => Linear?.ExpandedUncertainty(Confidence);

    /// <summary>Propagates the whole distributions through the same model and compares.</summary>
    /// <param name="seed">
    /// Seed of all draws. Every budget may start from the same one: a further specimen then changes no other's figures.
    /// </param>
    public BudgetComparison Propagate(ulong seed) =>
        BudgetComparison.Of(_model, _inputs, Linear, new MonteCarloPlan { Confidence = Confidence, Seed = seed });

    private static UncertaintyLine Filled(UncertaintyLine line, BudgetLine linear, double combined) => line with
    {
        Sensitivity = linear.Sensitivity,
        Share = combined > 0 ? linear.Contribution * linear.Contribution / (combined * combined) : null,
    };
}
