namespace SweepStats.Statistics;

/// <summary>How each of several groups scatters, some of whose values are known only to lie above a bound.</summary>
/// <remarks>
/// Two values that differ tell the scatter of their group: maximum likelihood with the bounds, times n/(n − 1), on one degree of
/// freedom less than values are known; without bounds that is the variance. A group with one value, and bounds above it, scatters
/// at least as these stand. Other groups tell nothing.
/// </remarks>
internal static class CensoredScatter
{
    /// <summary>The groups, for <see cref="UnequalScatter"/>; null where none tells its scatter.</summary>
    public static UnequalScatter? Of(ReadOnlySpan<double> values, ReadOnlySpan<bool> censored, ReadOnlySpan<int> groups)
    {
        double[][] own = GroupRows.Of(values, groups);
        bool[][] bounds = GroupRows.Of(censored, groups);
        double[] freedom = new double[own.Length], variances = new double[own.Length];
        for (int g = 0; g < own.Length; g++)
        {
            (variances[g], freedom[g]) = Of(own[g], bounds[g]);
        }

        return variances.Any(v => v > 0) ? UnequalScatter.OfNumbers([.. own.Select(g => g.Length)], freedom, variances) : null;
    }

    private static (double Variance, double Freedom) Of(double[] values, bool[] bounds)
    {
        int known = bounds.AsSpan().Count(false);
        double scale = values.Length / (values.Length - 1.0);
        if (known == values.Length)
        {
            return known > 1 ? (Sample.SquaredDeviations(values, Sample.Mean(values)) / (known - 1), known - 1) : (0, 0);
        }

        // Values that rounding alone tells apart leave the likelihood no width to climb by.
        if (known > 1 && CensoredGroups.Of(values, bounds, new int[values.Length]) is { } fit && double.IsFinite(fit.Deviation))
        {
            return (fit.Deviation * fit.Deviation * scale, known - 1);
        }

        double lowest = values.Where((_, i) => !bounds[i]).DefaultIfEmpty(double.PositiveInfinity).Min();
        double[] above = [.. values.Where((v, i) => !bounds[i] || v > lowest)];
        return known > 0 && above.Length > 1
            ? (Sample.SquaredDeviations(above, Sample.Mean(above)) / (above.Length - 1), 1) : (0, 0);
    }
}
