using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>How much each level adds to the scatter of single sweeps.</summary>
internal static class LevelScatter
{
    /// <summary>By restricted likelihood, outermost level first; empty where nothing repeats.</summary>
    /// <param name="design">Which levels can be told apart.</param>
    /// <param name="values">One value a sweep in dB.</param>
    public static ImmutableArray<LevelDeviation> Of(LotDesign design, double[] values)
    {
        if (design.Nesting is not { } nesting)
        {
            return values.Length > 1 ? [new LevelDeviation(design.Innermost, Sample.StandardDeviation(values))] : [];
        }

        NestedComponents parts = NestedReml.Of(values, nesting);
        return [.. design.Levels.Zip(parts.Variances, (level, variance) => new LevelDeviation(level, Math.Sqrt(variance))), new LevelDeviation(design.Innermost, Math.Sqrt(parts.Residual))];
    }
}
