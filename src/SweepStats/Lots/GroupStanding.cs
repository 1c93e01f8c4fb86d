using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>One group among the others: its mean and its scatter.</summary>
/// <param name="Name">Name of the specimen or lot.</param>
/// <param name="Count">Values in it.</param>
/// <param name="H">Mandel's h: distance of its mean from the mean of the means, over the scatter of the means.</param>
/// <param name="K">Mandel's k: its scatter over that of all groups; not a number for a single value.</param>
/// <param name="CriticalK">
/// k that this group passes by chance at 5 % and at 1 %, by its own number of values; not numbers for a single value.
/// </param>
public readonly record struct GroupMember(string Name, int Count, double H, double K, ConsistencyLimits CriticalK);

/// <summary>Whether the means and scatters of groups of repeats go together, by the checks of ISO 5725-2. Immutable.</summary>
/// <remarks>
/// Critical values are those of the usual 5 % (a straggler) and 1 % (an outlier), h two-sided. Cochran's C asks about the scatter
/// that is least likely by chance, Grubbs' G about the outermost mean. Groups may be of different size for C and k: each is held
/// to the beta distribution of its own share of the squares, and C counts how many were asked (Bonferroni). A single value has no
/// scatter and is left out there. h and G take the means as equally precise, which those of groups of different size are not.
/// Source: ISO 5725-2:1994, 7.3; 't Lam 2009 (both from memory).
/// </remarks>
public sealed record GroupStanding
{
    /// <summary>Level at which a value is a straggler.</summary>
    public const double StragglerLevel = 0.05;

    /// <summary>Level at which a value is an outlier.</summary>
    public const double OutlierLevel = 0.01;

    private GroupStanding()
    {
    }

    /// <summary>The groups.</summary>
    public required ImmutableArray<GroupMember> Members { get; init; }

    /// <summary>s_r in dB.</summary>
    public required double RepeatabilityDb { get; init; }

    /// <summary>s_R in dB.</summary>
    public required double ReproducibilityDb { get; init; }

    /// <summary>h that one given group passes at 5 % and at 1 %.</summary>
    public required ConsistencyLimits CriticalH { get; init; }

    /// <summary>
    /// Cochran's C, the share of all squares, of the group whose share is least likely by chance; that group, and the probability
    /// that any of them has so unlikely a share.
    /// </summary>
    public required (double Statistic, string Name, double Probability) Cochran { get; init; }

    /// <summary>Grubbs' G of the outermost mean, the group it is of, and its probability by chance.</summary>
    public required (double Statistic, string Name, double Probability) Grubbs { get; init; }

    /// <summary>Compares groups.</summary>
    /// <param name="groups">Names and values in dB.</param>
    /// <returns>
    /// The comparison; null for fewer than three groups, fewer than two of them with two values, a value that is not finite, or
    /// where nothing scatters.
    /// </returns>
    internal static GroupStanding? Of(IReadOnlyList<GroupValues> groups)
    {
        if (groups.Count < 3 || groups.Count(g => g.Values.Length > 1) < 2
            || !groups.All(g => Array.TrueForAll(g.Values, double.IsFinite)))
        {
            return null;
        }

        double[] values = [.. groups.SelectMany(g => g.Values)];
        GroupPrecision found = GroupPrecision.Of(values, [.. groups.SelectMany((g, i) => g.Values.Select(_ => i))]);
        if (!(found.Repeatability > 0) || !found.H.All(double.IsFinite))
        {
            return null;
        }

        int degrees = values.Length - groups.Count;
        // Hundreds of groups mostly have one size.
        var limits =
            groups.Select(g => g.Values.Length).Distinct().ToDictionary(size => size, size => LimitsOfK(size - 1, degrees));
        GroupMember[] members =
            [.. groups.Select(
                (g, i) => new GroupMember(g.Name, g.Values.Length, found.H[i], found.K[i], limits[g.Values.Length]))];
        var outermost = Statistics.Grubbs.Of([.. groups.Select(g => Sample.Mean(g.Values))]);
        return new GroupStanding
        {
            Members = [.. members],
            RepeatabilityDb = found.Repeatability,
            ReproducibilityDb = found.Reproducibility,
            CriticalH = new(
                GroupConsistency.MandelH(groups.Count, StragglerLevel), GroupConsistency.MandelH(groups.Count, OutlierLevel)),
            Cochran = LeastLikelyScatter([.. members.Where(m => m.Count > 1)], degrees),
            Grubbs = (outermost.Statistic, groups[outermost.Index].Name, outermost.Probability),
        };
    }

    private static ConsistencyLimits LimitsOfK(int own, int all)
    {
        double At(double level) => own < 1 ? double.NaN : GroupConsistency.MandelKOfDegrees(own, all - own, level);
        return new(At(StragglerLevel), At(OutlierLevel));
    }

    // The largest share is not the answer where sizes differ: ten values have more of the squares than three by their number
    // alone.
    private static (double Statistic, string Name, double Probability) LeastLikelyScatter(GroupMember[] repeated, int degrees)
    {
        (string name, double share, double probability) = repeated.Select(m =>
        {
            int own = m.Count - 1;
            double share = Math.Min(1, m.K * m.K * own / degrees);
            return (m.Name, Share: share, Probability: GroupConsistency.ShareProbability(share, own, degrees - own));
        }).OrderBy(m => m.Probability).ThenByDescending(m => m.Share).First();
        return (share, name, Math.Min(1, repeated.Length * probability));
    }
}
