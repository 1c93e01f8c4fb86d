namespace SweepStats.Statistics;

/// <summary>A value that lies farther from the rest of its group than normal scatter allows.</summary>
/// <param name="Group">Which group.</param>
/// <param name="Place">Its place in the group.</param>
/// <param name="T">Its distance from the mean of the others of its group against the scatter of all other values: Student's t.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of that scatter.</param>
/// <param name="Probability">Probability of any value as far out without outliers, by the sum over the values left, at most 1.</param>
internal readonly record struct GroupedOutlier(int Group, int Place, double T, int DegreesOfFreedom, double Probability);

/// <summary>Which values of several groups, up to a number set beforehand, lie farther out than one common normal scatter allows.</summary>
/// <remarks>
/// The generalised extreme studentised deviate for groups that each have a mean of their own: the value with the largest externally studentised residual
/// t = e/(s₋·√(1 − 1/nⱼ)) is taken out k times, s₋ the scatter within groups without it on N − groups − 1 degrees of freedom. The outliers are those up to the
/// last whose probability is below the level, so that outliers which hide each other are still counted. One group gives <see cref="GeneralisedEsd"/>.
/// Assumes one scatter in all groups: a group that scatters more than the rest is taken for full of outliers.
/// Source: Rosner 1983, Technometrics 25, 165; residuals as in Cook and Weisberg 1982 (from memory). Error: relative 1e-10 (fixtures/oracles/outliers.R).
/// </remarks>
internal static class GroupedOutliers
{
    /// <summary>Looks for outliers; the farthest first.</summary>
    /// <param name="groups">The groups, each in any order; one of a single value takes no part.</param>
    /// <param name="most">Largest number looked for, at least 1.</param>
    /// <param name="level">Chance of any false alarm, for example 0.05.</param>
    /// <exception cref="ArgumentException">A value that is not finite.</exception>
    public static IReadOnlyList<GroupedOutlier> Of(IReadOnlyList<double[]> groups, int most, double level)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(most, 1);
        FiniteValues.RequireLevel(level);
        List<(int Place, double Value)>[] left = [.. groups.Select(g => Numbered(g))];
        List<GroupedOutlier> farthest = [];
        int outliers = 0;
        while (farthest.Count < most && Farthest(left) is { } next)
        {
            farthest.Add(next);
            left[next.Group].RemoveAll(v => v.Place == next.Place);
            outliers = next.Probability < level ? farthest.Count : outliers;
        }

        return farthest[..outliers];
    }

    private static List<(int Place, double Value)> Numbered(double[] group)
    {
        FiniteValues.Require(group, 0, nameof(group));
        return [.. group.Select((value, place) => (place, value))];
    }

    private static GroupedOutlier? Farthest(List<(int Place, double Value)>[] groups)
    {
        double[][] deviations = [.. groups.Select(g => g.Count < 2 ? [] : Deviations.FromMean([.. g.Select(v => v.Value)]))];
        int count = deviations.Sum(d => d.Length);
        int freedom = count - deviations.Count(d => d.Length > 0) - 1;
        if (freedom < 1)
        {
            return null;
        }

        (int Group, int At) far = (0, 0);
        double most = -1;
        for (int g = 0; g < deviations.Length; g++)
        {
            double share = 1 - (1.0 / deviations[g].Length);
            for (int i = 0; i < deviations[g].Length; i++)
            {
                double taken = deviations[g][i] * deviations[g][i] / share;
                far = taken > most ? (g, i) : far;
                most = Math.Max(most, taken);
            }
        }

        // The squares are summed without the value, not subtracted: what is left may be far smaller.
        var rest = new CompensatedSum();
        for (int g = 0; g < deviations.Length; g++)
        {
            double[] others = g != far.Group ? deviations[g] : Deviations.FromMean([.. groups[g].Where((_, i) => i != far.At).Select(v => v.Value)]);
            rest.Add(Deviations.Product(others, others));
        }

        double t = most == 0 ? 0 : Math.Sqrt(most / (rest.Value / freedom));
        double beyond = double.IsFinite(t) ? StudentT.UpperTail(t, freedom) : 0;
        return new GroupedOutlier(far.Group, groups[far.Group][far.At].Place, t, freedom, Math.Min(1, 2 * count * beyond));
    }
}
