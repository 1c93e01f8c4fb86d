namespace SweepStats.Clipping;

/// <summary>The highest level of a sweep, and levels that are equal to the last digit.</summary>
internal static class TopLevel
{
    // Readers' rounding must not part levels that a display showed alike.
    private const double Same = 1e-6;

    public static double Of(ReadOnlySpan<double> levels)
    {
        double top = double.NegativeInfinity;
        foreach (double level in levels)
        {
            top = Math.Max(top, level);
        }

        return top;
    }

    public static bool IsSame(double a, double b) => Math.Abs(a - b) <= Same;

    public static bool IsAmong(IReadOnlyCollection<double> levels, double level) => levels.Any(l => IsSame(l, level));
}
