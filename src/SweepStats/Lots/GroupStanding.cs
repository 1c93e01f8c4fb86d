using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>One group among the others: its mean and its scatter.</summary>
/// <param name="Name">Name of the specimen or lot.</param>
/// <param name="Count">Values in it.</param>
/// <param name="H">Mandel's h: distance of its mean from the mean of the means, over the scatter of the means.</param>
/// <param name="K">Mandel's k: its scatter over that of all groups; not a number for a single value.</param>
public readonly record struct GroupMember(string Name, int Count, double H, double K);

/// <summary>Whether the means and scatters of groups of repeats go together, by the checks of ISO 5725-2. Immutable.</summary>
/// <remarks>
/// Critical values are those of the usual 5 % (a straggler) and 1 % (an outlier), h two-sided, at the mean number of repeats. Cochran's C asks about the largest scatter, Grubbs' G about the
/// outermost mean. Source: ISO 5725-2:1994, 7.3 (from memory).
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
    public required (double Straggler, double Outlier) CriticalH { get; init; }

    /// <summary>k that one given group passes at 5 % and at 1 %.</summary>
    public required (double Straggler, double Outlier) CriticalK { get; init; }

    /// <summary>Cochran's C, the group it is of, and what it passes at 5 % and at 1 %.</summary>
    public required (double Statistic, string Name, double Straggler, double Outlier) Cochran { get; init; }

    /// <summary>Grubbs' G of the outermost mean, the group it is of, and its probability by chance.</summary>
    public required (double Statistic, string Name, double Probability) Grubbs { get; init; }

    /// <summary>Compares groups.</summary>
    /// <param name="groups">Names and values in dB.</param>
    /// <returns>The comparison; null for fewer than three groups, where no group has two values, or where nothing scatters.</returns>
    internal static GroupStanding? Of(IReadOnlyList<(string Name, double[] Values)> groups)
    {
        int repeated = groups.Count(g => g.Values.Length > 1);
        if (groups.Count < 3 || repeated < 2 || !groups.All(g => Array.TrueForAll(g.Values, double.IsFinite)))
        {
            return null;
        }

        double[] values = [.. groups.SelectMany(g => g.Values)];
        GroupPrecision found = GroupPrecision.Of(values, [.. groups.SelectMany((g, i) => g.Values.Select(_ => i))]);
        if (!(found.Repeatability > 0) || !found.H.All(double.IsFinite))
        {
            return null;
        }

        int size = Math.Max(2, (int)Math.Round((double)values.Length / groups.Count));
        var outermost = Statistics.Grubbs.Of([.. groups.Select(g => Sample.Mean(g.Values))]);
        return new GroupStanding
        {
            Members = [.. groups.Select((g, i) => new GroupMember(g.Name, g.Values.Length, found.H[i], found.K[i]))],
            RepeatabilityDb = found.Repeatability,
            ReproducibilityDb = found.Reproducibility,
            CriticalH = (GroupConsistency.MandelH(groups.Count, StragglerLevel), GroupConsistency.MandelH(groups.Count, OutlierLevel)),
            CriticalK = (GroupConsistency.MandelK(repeated, size, StragglerLevel), GroupConsistency.MandelK(repeated, size, OutlierLevel)),
            Cochran = (found.Cochran, groups[found.MostScattered].Name,
                GroupConsistency.Cochran(repeated, size, StragglerLevel), GroupConsistency.Cochran(repeated, size, OutlierLevel)),
            Grubbs = (outermost.Statistic, groups[outermost.Index].Name, outermost.Probability),
        };
    }
}
