using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Quantities;

namespace SweepStats.Trends;

/// <summary>
/// How far findings could move the shielding at a frequency beyond its limits, whichever specimen they are of: the line follows
/// each of them in part.
/// </summary>
internal sealed class FrequencyBias(ImmutableArray<Finding> findings)
{
    private readonly ImmutableArray<Finding> _biased = [.. findings.Where(f => f.Bias is not null || !f.Biases.IsEmpty)];

    private readonly ILookup<(string Code, Hertz At), Bias> _placed =
        findings.SelectMany(f => f.Biases.Select(b => (f.Code, b.At, b.Bias))).ToLookup(b => (b.Code, b.At), b => b.Bias);

    /// <summary>The farthest to each side, with the codes of the findings behind it.</summary>
    public (Bias Farthest, ImmutableArray<string> Codes) At(Hertz at)
    {
        Bias farthest = default;
        SortedSet<string> codes = new(StringComparer.Ordinal);
        foreach (Finding finding in _biased.Where(f => f.Where.IsEmpty || f.Where.Any(w => w.Contains(at))))
        {
            foreach (Bias bias in finding.Biases.IsEmpty ? [finding.Bias!.Value] : _placed[(finding.Code, at)])
            {
                farthest = new Bias(Math.Max(farthest.LowerByDb, bias.LowerByDb), Math.Max(farthest.HigherByDb, bias.HigherByDb));
                codes.Add(finding.Code);
            }
        }

        return (farthest, [.. codes]);
    }
}
