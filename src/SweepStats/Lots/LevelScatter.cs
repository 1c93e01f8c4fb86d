using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>How much each level adds to the scatter of single sweeps.</summary>
internal static class LevelScatter
{
    /// <summary>By restricted likelihood, outermost level first; empty where nothing repeats.</summary>
    /// <param name="design">Which levels can be told apart.</param>
    /// <param name="values">One value a sweep in dB.</param>
    public static ImmutableArray<LevelDeviation> Of(LotDesign design, double[] values) =>
        design.Nesting is { } nesting ? ByLevel(design, NestedReml.Of(values, nesting))
        : values.Length > 1 ? [new LevelDeviation(design.Innermost, Sample.StandardDeviation(values))] : [];

    /// <summary>The same of sweeps that are reduced to the means of their innermost groups.</summary>
    public static ImmutableArray<LevelDeviation> Of(LotDesign design, NestedValues values) =>
        design.Nesting is { } nesting ? ByLevel(design, NestedReml.Of(values, nesting))
        : design.GroupSizes[0] > 1
        ? [new LevelDeviation(design.Innermost, Math.Sqrt(values.Within / (design.GroupSizes[0] - 1)))] : [];

    private static ImmutableArray<LevelDeviation> ByLevel(LotDesign design, NestedComponents parts)
    {
        var deviations = ImmutableArray.CreateBuilder<LevelDeviation>(design.Levels.Length + 1);
        for (int level = 0; level < design.Levels.Length; level++)
        {
            deviations.Add(new LevelDeviation(design.Levels[level], Math.Sqrt(parts.Variances[level])));
        }

        deviations.Add(new LevelDeviation(design.Innermost, Math.Sqrt(parts.Residual)));
        return deviations.MoveToImmutable();
    }
}
