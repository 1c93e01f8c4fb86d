using System.Collections.Immutable;
using SweepStats.Checks;
using SweepStats.Leakage;
using SweepStats.Repeats;

namespace SweepStats.Verdicts;

/// <summary>A doubt that matters to every shielding figure, and that nothing in the campaign could test.</summary>
public enum UntestedDoubt
{
    /// <summary>Whether the receiver follows the level up to the reference.</summary>
    Overload,

    /// <summary>What reaches the receiver round the specimen.</summary>
    Leakage,

    /// <summary>How well the specimen can be put back.</summary>
    PuttingBack,

    /// <summary>What drifted between reference and specimen.</summary>
    Drift,
}

/// <summary>Finds what was not tested.</summary>
internal static class UntestedDoubts
{
    public static ImmutableArray<UntestedDoubt> Of(Evidence seen)
    {
        var untested = ImmutableArray.CreateBuilder<UntestedDoubt>();
        void Add(UntestedDoubt doubt, bool tested)
        {
            if (!tested)
            {
                untested.Add(doubt);
            }
        }

        Add(UntestedDoubt.Overload, seen.Linearity is not null || new OverInput().UntestedBecause(seen) is null);
        Add(UntestedDoubt.Leakage, seen.Leakages.Any(l => l.Source == LeakageSource.Plate));
        Add(UntestedDoubt.PuttingBack, seen.Curves.All(c => c.PlacementCount > 1));
        Add(UntestedDoubt.Drift, seen.Timing == ReferenceTiming.BothSides && !seen.Drifts.IsEmpty);
        return untested.ToImmutable();
    }
}
