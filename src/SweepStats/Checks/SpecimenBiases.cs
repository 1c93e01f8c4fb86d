using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>What one finding says of one specimen at one frequency.</summary>
/// <param name="Code">Its check.</param>
/// <param name="Bias">How far the true shielding may lie outside its interval for it.</param>
internal readonly record struct FindingBias(string Code, Bias Bias);

/// <summary>
/// How far the true shielding of one specimen may lie outside its intervals, for what findings say. Several may come true
/// together.
/// </summary>
/// <remarks>How far a fault reaches that does not say so, nobody knows.</remarks>
internal sealed class SpecimenBiases
{
    private readonly ImmutableArray<Finding> _everywhere;
    private readonly ILookup<Hertz, FindingBias> _placed;

    /// <param name="name">The specimen; null for what concerns all of them alike.</param>
    /// <param name="findings">What the checks found.</param>
    public SpecimenBiases(SpecimenName? name, ImmutableArray<Finding> findings)
    {
        _everywhere =
            [.. findings.Where(f => f.Biases.IsEmpty && Reach(f) is not null && f.Concerns(name))];
        _placed = findings.SelectMany(
            f => f.Biases.Where(b => b.Specimen == name).Select(b => (b.At, Of: new FindingBias(f.Code, b.Bias))))
            .ToLookup(b => b.At, b => b.Of);
    }

    /// <summary>Nothing is said of it at any frequency.</summary>
    public bool None => _everywhere.IsEmpty && _placed.Count == 0;

    /// <summary>What stands at a frequency, a finding each.</summary>
    public IEnumerable<FindingBias> At(Hertz at) => _everywhere
        .Where(f => f.Where.IsEmpty || f.Where.Any(w => w.Contains(at))).Select(f => new FindingBias(f.Code, Reach(f)!.Value))
        .Concat(_placed[at]);

    /// <summary>All of it together.</summary>
    public Bias SumAt(Hertz at)
    {
        FindingBias[] here = [.. At(at)];
        return new Bias(here.Sum(f => f.Bias.LowerByDb), here.Sum(f => f.Bias.HigherByDb));
    }

    private static Bias? Reach(Finding finding) => finding.Bias ?? (finding.Severity == Severity.Fault ? Bias.Unknown : null);
}
