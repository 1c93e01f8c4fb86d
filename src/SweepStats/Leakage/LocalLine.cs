using SweepStats.Statistics;

namespace SweepStats.Leakage;

/// <summary>Straight lines through the neighbourhood of each frequency.</summary>
internal static class LocalLine
{
    /// <summary>What each level lies above the line through its neighbours to both sides, in dB.</summary>
    /// <param name="levels">Levels in dB, three at least.</param>
    /// <param name="halfWidth">Neighbours to each side.</param>
    public static double[] Residuals(double[] levels, int halfWidth)
    {
        double Away(int f)
        {
            int first = Math.Max(0, Math.Min(f - halfWidth, levels.Length - (2 * halfWidth) - 1));
            int end = Math.Min(levels.Length, Math.Max(f + halfWidth + 1, (2 * halfWidth) + 1));
            return levels[f] - EvenLine.Of(levels.AsSpan(first, end - first)).At(f - first);
        }

        return [.. Enumerable.Range(0, levels.Length).Select(Away)];
    }
}
