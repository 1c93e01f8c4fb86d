using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Budgets;

/// <summary>Gathers the inputs of a budget, each with the line that tells of it.</summary>
internal sealed class BudgetInputs
{
    private readonly ImmutableArray<InputQuantity>.Builder _inputs = ImmutableArray.CreateBuilder<InputQuantity>();
    private readonly ImmutableArray<UncertaintyLine>.Builder _lines = ImmutableArray.CreateBuilder<UncertaintyLine>();

    /// <summary>The inputs so far, in the order in which they were added.</summary>
    public ImmutableArray<InputQuantity> Inputs => _inputs.ToImmutable();

    /// <summary>A line an input, in the same order; sensitivities and shares are not known yet.</summary>
    public ImmutableArray<UncertaintyLine> Lines => _lines.ToImmutable();

    /// <summary>A mean of repeats: Student's t about it.</summary>
    public void Mean(BudgetPart part, double estimate, Contribution error) =>
        Add(part, null, part == BudgetPart.Reference ? ErrorActsOn.Reference : ErrorActsOn.Covered,
            new InputQuantity(part.ToString(), estimate, new StudentSpread(error.StandardUncertainty, error.DegreesOfFreedom)));

    /// <summary>A voltage of unknown phase beside the signal: an arcsine error about zero.</summary>
    public void Leakage(double halfWidthDb) =>
        Add(BudgetPart.Leakage, null, ErrorActsOn.Covered,
            new InputQuantity(nameof(BudgetPart.Leakage), 0, new ArcsineSpread(halfWidthDb)));

    /// <summary>A stated error, about zero.</summary>
    public void Stated(StatedError error) =>
        Add(BudgetPart.Stated, error.Entry, error.ActsOn, new InputQuantity(error.Entry.Name, 0, error.Entry.Spread));

    private void Add(BudgetPart part, UncertaintyEntry? entry, ErrorActsOn actsOn, InputQuantity input)
    {
        _inputs.Add(input);
        _lines.Add(new UncertaintyLine
        {
            Part = part,
            Entry = entry,
            ActsOn = actsOn,
            StandardUncertaintyDb = input.StandardUncertainty,
            DegreesOfFreedom = input.Freedom,
            Sensitivity = null,
            Share = null,
        });
    }
}
