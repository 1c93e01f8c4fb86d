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

/// <summary>
/// Which variances the sweeps of a campaign can tell apart: lot, specimen, placement, sweep, unbalanced as they come. Immutable.
/// </summary>
/// <remarks>
/// A level shows a variance of its own only where some group of it holds two of the level below, and where there are two groups
/// of it within one above. Where placements were swept once, or not named, what they add stays within the level below;
/// <see cref="Innermost"/> says to which one the rest belongs.
/// </remarks>
internal sealed class LotDesign
{
    private LotDesign(ImmutableArray<VarianceLevel> levels, Nesting? nesting, VarianceLevel innermost, int sweeps)
    {
        (Levels, Nesting, Innermost) = (levels, nesting, innermost);
        GroupOf = nesting is null ? new int[sweeps] : nesting.Groups(nesting.LevelCount - 1).ToArray();
        GroupSizes = nesting is null ? [sweeps] : nesting.Sizes[^1];
    }

    /// <summary>Levels with a variance of their own, outermost first, without the innermost.</summary>
    public ImmutableArray<VarianceLevel> Levels { get; }

    /// <summary>The innermost level that repeats.</summary>
    public VarianceLevel Innermost { get; }

    /// <summary>The sweeps in their groups; null where nothing can be told apart.</summary>
    public Nesting? Nesting { get; }

    /// <summary>The innermost group of each sweep; all are in one where nothing can be told apart.</summary>
    public int[] GroupOf { get; }

    /// <summary>Sweeps in each innermost group.</summary>
    public ImmutableArray<int> GroupSizes { get; }

    /// <summary>The design of all sweeps of the specimens, in their order.</summary>
    public static LotDesign Of(IReadOnlyList<SpecimenSweeps> specimens)
    {
        (VarianceLevel Level, int[] Groups)[] all =
        [
            (VarianceLevel.Lot, Numbered(specimens, (s, _) => new(s.Name.Lot, "", 0))),
            (VarianceLevel.Specimen, Numbered(specimens, (s, _) => new(s.Name.Lot, s.Name.Specimen, 0))),
            (VarianceLevel.Placement, Numbered(specimens, (s, placement) => new(s.Name.Lot, s.Name.Specimen, placement))),
        ];
        List<(VarianceLevel Level, int[] Groups)> kept = [];
        VarianceLevel innermost = VarianceLevel.Sweep;
        int below = all[0].Groups.Length;
        foreach ((VarianceLevel level, int[] groups) in all.Reverse())
        {
            int count = groups.Max() + 1;
            if (count == 1)
            {
                break;
            }

            // One group below each: what is told belongs to the outer of the two.
            if (count == below && kept.Count == 0)
            {
                innermost = level;
            }
            else if (count == below)
            {
                kept[0] = (level, groups);
            }
            else
            {
                kept.Insert(0, (level, groups));
            }

            below = count;
        }

        return new LotDesign([.. kept.Select(k => k.Level)], kept.Count == 0 ? null : Nesting.Of([.. kept.Select(k => k.Groups)]),
            innermost, all[0].Groups.Length);
    }

    // The group of each sweep, numbered through over all specimens.
    private static int[] Numbered(IReadOnlyList<SpecimenSweeps> specimens, Func<SpecimenSweeps, int, GroupKey> group)
    {
        var numbers = new Dictionary<GroupKey, int>();
        List<int> groups = [];
        foreach (SpecimenSweeps specimen in specimens)
        {
            foreach (int placement in specimen.Placements)
            {
                GroupKey key = group(specimen, placement);
                if (!numbers.TryGetValue(key, out int number))
                {
                    numbers.Add(key, number = numbers.Count);
                }

                groups.Add(number);
            }
        }

        return [.. groups];
    }

    /// <summary>What the sweeps of a group share; an empty name or 0 where it does not matter.</summary>
    private readonly record struct GroupKey(string Lot, string Specimen, int Placement);
}
