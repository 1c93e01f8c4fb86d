using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>What a variance of the shielding belongs to.</summary>
public enum VarianceLevel
{
    /// <summary>From lot to lot.</summary>
    Lot,

    /// <summary>From specimen to specimen of a lot.</summary>
    Specimen,

    /// <summary>From placement to placement of a specimen.</summary>
    Placement,

    /// <summary>From sweep to sweep of a placement: repeatability.</summary>
    Sweep,
}

/// <summary>Which variances the sweeps of a campaign can tell apart: lot, specimen, placement, sweep, unbalanced as they come. Immutable.</summary>
/// <remarks>
/// A level shows a variance of its own only where some group of it holds two of the level below, and where there are two groups of it within one above. Where
/// placements were swept once, or not named, what they add stays within the level below; <see cref="Innermost"/> says to which one the rest belongs.
/// </remarks>
internal sealed class LotDesign
{
    private LotDesign(ImmutableArray<VarianceLevel> levels, Nesting? nesting, VarianceLevel innermost)
    {
        (Levels, Nesting, Innermost) = (levels, nesting, innermost);
    }

    /// <summary>Levels with a variance of their own, outermost first, without the innermost.</summary>
    public ImmutableArray<VarianceLevel> Levels { get; }

    /// <summary>The innermost level that repeats.</summary>
    public VarianceLevel Innermost { get; }

    /// <summary>The sweeps in their groups; null where nothing can be told apart.</summary>
    public Nesting? Nesting { get; }

    public static LotDesign Of(IReadOnlyList<SpecimenSweeps> specimens)
    {
        List<int> lots = [], pieces = [], placements = [];
        string[] names = [.. specimens.Select(s => s.Name.Lot).Distinct()];
        for (int i = 0; i < specimens.Count; i++)
        {
            foreach (int placement in specimens[i].Placements)
            {
                lots.Add(Array.IndexOf(names, specimens[i].Name.Lot));
                pieces.Add(i);
                placements.Add(placement);
            }
        }

        (VarianceLevel Level, int[] Labels)[] all = [(VarianceLevel.Lot, [.. lots]), (VarianceLevel.Specimen, [.. pieces]), (VarianceLevel.Placement, [.. placements])];
        List<(VarianceLevel Level, int[] Labels)> kept = [];
        VarianceLevel innermost = VarianceLevel.Sweep;
        // From the inside out.
        int below = lots.Count;
        for (int level = all.Length - 1; level >= 0; level--)
        {
            int groups = Groups(all, level);
            if (groups == below)
            {
                // One group below each: what is told belongs to the outer of the two.
                if (kept.Count == 0)
                {
                    innermost = all[level].Level;
                }
                else
                {
                    kept[0] = (all[level].Level, kept[0].Labels);
                }

                continue;
            }

            if (groups > 1)
            {
                kept.Insert(0, all[level]);
                below = groups;
            }
        }

        return new LotDesign([.. kept.Select(k => k.Level)], kept.Count == 0 ? null : Nesting.Of([.. kept.Select(k => k.Labels)]), innermost);
    }

    private static int Groups((VarianceLevel Level, int[] Labels)[] all, int level) =>
        Enumerable.Range(0, all[0].Labels.Length).Select(i => string.Join('/', all.Take(level + 1).Select(l => l.Labels[i]))).Distinct().Count();
}
