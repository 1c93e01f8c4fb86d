using SweepStats.Alignment;

namespace SweepStats.Clipping;

/// <summary>The highest level of a sweep, and levels that are equal to the last digit.</summary>
internal static class TopLevel
{
    public static double Of(ReadOnlySpan<double> levels)
    {
        double top = double.NegativeInfinity;
        foreach (double level in levels)
        {
            top = Math.Max(top, level);
        }

        return top;
    }

    public static bool IsAmong(IReadOnlyCollection<double> levels, double level) => levels.Any(l => DisplayStep.IsSame(l, level));
}
