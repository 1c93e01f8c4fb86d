namespace SweepStats.Statistics;

/// <summary>Whether groups scatter alike.</summary>
/// <remarks>
/// Analysis of variance of the distances |x − centre of its group|; F and its probability as <see cref="OneWayAnova"/> gives
/// them. Dimensionless. Not a number where no group scatters. Every group needs three values: the two distances of a pair are
/// equal, so that pairs alone give an endless F.
/// </remarks>
internal static class Levene
{
    /// <summary>
    /// Distances from the medians of the groups (Brown and Forsythe): keeps its level where the values are not normal.
    /// Conservative in small groups.
    /// </summary>
    /// <remarks>
    /// Source: Brown and Forsythe 1974, Journal of the American Statistical Association 69, 364 (from memory); NIST e-Handbook
    /// 1.3.5.10. Error: relative 1e-12.
    /// </remarks>
    /// <param name="values">All values.</param>
    /// <param name="groups">The group of each value, numbered from 0 without gaps.</param>
    /// <exception cref="ArgumentException">
    /// Numbers of values and groups differ, a value is not finite, there is one group only, or a group has fewer than three
    /// values.
    /// </exception>
    public static OneWayAnova AboutMedians(ReadOnlySpan<double> values, ReadOnlySpan<int> groups) =>
        About(values, groups, FromMedian);

    /// <summary>
    /// Distances from the means of the groups (Levene): finds more in normal values, and false alarms in skewed ones.
    /// </summary>
    /// <remarks>Source: Levene 1960 (from memory); US EPA, Unified Guidance 2009, section 11.2. Error: relative 1e-12.</remarks>
    /// <param name="values">All values.</param>
    /// <param name="groups">The group of each value, numbered from 0 without gaps.</param>
    /// <exception cref="ArgumentException">
    /// Numbers of values and groups differ, a value is not finite, there is one group only, or a group has fewer than three
    /// values.
    /// </exception>
    public static OneWayAnova AboutMeans(ReadOnlySpan<double> values, ReadOnlySpan<int> groups) =>
        About(values, groups, group => Deviations.FromMean(group));

    private static double[] FromMedian(double[] group)
    {
        double median = Sample.Median(group);
        return [.. group.Select(value => value - median)];
    }

    private static OneWayAnova About(ReadOnlySpan<double> values, ReadOnlySpan<int> groups, Func<double[], double[]> away)
    {
        FiniteValues.Require(values, 6, nameof(values));
        if (values.Length != groups.Length)
        {
            throw new ArgumentException($"Each value needs its group: {values.Length} values, {groups.Length} groups.",
                nameof(groups));
        }

        var places = new SortedDictionary<int, List<int>>();
        for (int i = 0; i < groups.Length; i++)
        {
            if (!places.TryGetValue(groups[i], out List<int>? group))
            {
                places.Add(groups[i], group = []);
            }

            group.Add(i);
        }

        double[] all = values.ToArray();
        var distances = new double[all.Length];
        foreach ((int number, List<int> group) in places)
        {
            if (group.Count < 3)
            {
                throw new ArgumentException($"Every group needs three values; group {number} has {group.Count}.", nameof(groups));
            }

            double[] deviations = away([.. group.Select(place => all[place])]);
            for (int i = 0; i < deviations.Length; i++)
            {
                distances[group[i]] = Math.Abs(deviations[i]);
            }
        }

        // The numbering of the groups is checked there.
        return OneWayAnova.Of(distances, groups);
    }
}
