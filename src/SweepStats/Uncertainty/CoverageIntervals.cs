using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>Intervals that hold a share of sorted trials. Source: JCGM 101:2008, 7.7.</summary>
internal static class CoverageIntervals
{
    /// <summary>The interval with as many trials below as above it; the trials rising.</summary>
    public static Interval Symmetric(double[] sorted, Confidence confidence)
    {
        int inside = Inside(sorted, confidence);
        int below = (sorted.Length - inside + 1) / 2;
        return new Interval(sorted[Math.Max(0, below - 1)], sorted[Math.Min(sorted.Length - 1, below - 1 + inside)]);
    }

    /// <summary>The shortest interval that holds the share, the lowest of several as short; the trials rising.</summary>
    public static Interval Shortest(double[] sorted, Confidence confidence)
    {
        int inside = Inside(sorted, confidence);
        int at = 0;
        for (int i = 1; i + inside < sorted.Length; i++)
        {
            at = sorted[i + inside] - sorted[i] < sorted[at + inside] - sorted[at] ? i : at;
        }

        return new Interval(sorted[at], sorted[Math.Min(sorted.Length - 1, at + inside)]);
    }

    private static int Inside(double[] sorted, Confidence confidence) =>
        (int)Math.Round(confidence.Level * sorted.Length, MidpointRounding.AwayFromZero);
}
