using SweepStats.Checks;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Trends;

/// <summary>
/// How far findings could move the shielding at a frequency beyond its limits, whichever specimen they are of: the line follows
/// each of them in part.
/// </summary>
internal sealed class FrequencyBias
{
    private readonly ImmutableArray<SpecimenBiases> _specimens;

    /// <summary>Sorts the findings by the specimens that they name; what concerns all counts for each.</summary>
    public FrequencyBias(ImmutableArray<Finding> findings)
    {
        IEnumerable<SpecimenName?> named =
            findings.SelectMany(f => f.Biases.Select(b => (SpecimenName?)b.Specimen).Append(f.Specimen ?? AnyOf(f.Lot)));
        _specimens = [.. named.Append(null).Distinct().Select(name => new SpecimenBiases(name, findings))];
    }

    // What is said of a lot holds for each piece of it, whatever its name.
    private static SpecimenName? AnyOf(string? lot) => lot is null ? null : new SpecimenName(lot, string.Empty);

    /// <summary>The farthest of any specimen to each side, with the codes of the findings behind it.</summary>
    public (Bias Farthest, ImmutableArray<string> Codes) At(Hertz at)
    {
        Bias farthest = default;
        SortedSet<string> codes = new(StringComparer.Ordinal);
        foreach (SpecimenBiases specimen in _specimens)
        {
            Bias sum = specimen.SumAt(at);
            farthest = new Bias(Math.Max(farthest.LowerByDb, sum.LowerByDb), Math.Max(farthest.HigherByDb, sum.HigherByDb));
            codes.UnionWith(specimen.At(at).Select(f => f.Code));
        }

        return (farthest, [.. codes]);
    }
}
