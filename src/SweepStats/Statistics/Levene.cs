namespace SweepStats.Statistics;

/// <summary>Whether groups scatter alike.</summary>
/// <remarks>
/// Analysis of variance of the distances |x − centre of its group|; F and its probability as <see cref="OneWayAnova"/> gives them. Dimensionless.
/// Not a number where no group scatters. Every group needs three values: the two distances of a pair are equal, so that pairs alone give an endless F.
/// </remarks>
internal static class Levene
{
    /// <summary>Distances from the medians of the groups (Brown and Forsythe): keeps its level where the values are not normal. Conservative in small groups.</summary>
    /// <remarks>Source: Brown and Forsythe 1974, Journal of the American Statistical Association 69, 364 (from memory); NIST e-Handbook 1.3.5.10. Error: relative 1e-12.</remarks>
    /// <param name="values">All values.</param>
    /// <param name="groups">The group of each value, numbered from 0 without gaps.</param>
    /// <exception cref="ArgumentException">Numbers of values and groups differ, a value is not finite, there is one group only, or a group has fewer than three values.</exception>
    public static OneWayAnova AboutMedians(ReadOnlySpan<double> values, ReadOnlySpan<int> groups) =>
        About(values, groups, group => Sample.Median(group));

    /// <summary>Distances from the means of the groups (Levene): finds more in normal values, and false alarms in skewed ones.</summary>
    /// <remarks>Source: Levene 1960 (from memory); US EPA, Unified Guidance 2009, section 11.2. Error: relative 1e-12.</remarks>
    /// <param name="values">All values.</param>
    /// <param name="groups">The group of each value, numbered from 0 without gaps.</param>
    /// <exception cref="ArgumentException">Numbers of values and groups differ, a value is not finite, there is one group only, or a group has fewer than three values.</exception>
    public static OneWayAnova AboutMeans(ReadOnlySpan<double> values, ReadOnlySpan<int> groups) =>
        About(values, groups, group => Sample.Mean(group));

    private static OneWayAnova About(ReadOnlySpan<double> values, ReadOnlySpan<int> groups, Func<double[], double> centre)
    {
        FiniteValues.Require(values, 6, nameof(values));
        var members = new SortedDictionary<int, List<double>>();
        for (int i = 0; i < Math.Min(values.Length, groups.Length); i++)
        {
            if (!members.TryGetValue(groups[i], out List<double>? group))
            {
                members.Add(groups[i], group = []);
            }

            group.Add(values[i]);
        }

        var centres = new Dictionary<int, double>();
        foreach ((int number, List<double> group) in members)
        {
            if (group.Count < 3)
            {
                throw new ArgumentException($"Every group needs three values; group {number} has {group.Count}.", nameof(groups));
            }

            centres.Add(number, centre([.. group]));
        }

        double[] distances = values.ToArray();
        for (int i = 0; i < Math.Min(values.Length, groups.Length); i++)
        {
            distances[i] = Math.Abs(values[i] - centres[groups[i]]);
        }

        // The numbering and the lengths are checked there.
        return OneWayAnova.Of(distances, groups);
    }
}
