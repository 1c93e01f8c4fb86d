using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Repeats;

/// <summary>Finds sweeps that are odd among their repeats, by their offset and by their shape.</summary>
/// <remarks>
/// Two conditions must hold. Against the scatter of all repeats together (reference and covered; floor sweeps by themselves),
/// which few sweeps of one group do not show well; and against its own group alone, since groups need not scatter alike.
/// </remarks>
public static class OddRepeats
{
    /// <summary>Sweeps a group needs by itself: with fewer even the farthest cannot be told from chance within it.</summary>
    public const int Fewest = 5;

    /// <summary>
    /// Sweeps a group needs where the other groups show well how sweeps scatter: of two, either may be the odd one.
    /// </summary>
    public const int FewestAmongMany = 3;

    /// <summary>Degrees of freedom of the scatter of all groups from which on it is known well enough for that.</summary>
    public const int ManyDegreesOfFreedom = 12;

    /// <summary>Size in dB from which on a sweep is called odd: less does not change what is claimed.</summary>
    public const double WorthTellingDb = 0.5;

    // Where readings are mostly noise their root mean square is skewed: a shape is another one only where it adds a good part of
    // what is usual.
    private const double OfUsualShape = 0.75;

    // A small group has no second condition: the first must hold the more strictly.
    private const double FalseAlarmOfSmall = 0.001;
    private const double WorthTellingOfSmallDb = 1;

    private const double FalseAlarmTogether = 0.02;
    private const double FalseAlarmOfGroup = 0.05;

    // Of ten sweeps and more a second may be odd; with fewer the test alarms more often than it says.
    private const int SweepsForEachOutlier = 10;

    /// <summary>All odd sweeps; one that is off as a whole is not named for its shape again.</summary>
    public static ImmutableArray<OddRepeat> Among(ImmutableArray<RepeatGroup> repeats) =>
        [.. repeats.GroupBy(g => g.Role == SweepRole.Floor).SelectMany(family => Odd([.. family]))];

    /// <summary>Whether an odd sweep of a group could be told.</summary>
    /// <param name="group">The group.</param>
    /// <param name="repeats">All groups.</param>
    public static bool CanTell(RepeatGroup group, ImmutableArray<RepeatGroup> repeats)
    {
        ArgumentNullException.ThrowIfNull(group);
        bool floor = group.Role == SweepRole.Floor;
        return group.Sweeps.Length >= Fewest
            || (group.Sweeps.Length >= FewestAmongMany && !group.IsOfPlacements
                && repeats.Where(g => g.Role == SweepRole.Floor == floor).Sum(g => g.Sweeps.Length - 1) > ManyDegreesOfFreedom);
    }

    private static IEnumerable<OddRepeat> Odd(IReadOnlyList<RepeatGroup> family)
    {
        List<OddRepeat> off = [.. Outliers(family, true, s => s.Offset.Value)];
        // Root mean squares of many points scatter in proportion to themselves: on a logarithmic scale evenly.
        IEnumerable<OddRepeat> shaped = Outliers(family, false, s => Math.Log(Math.Max(s.Shape.Value, 1e-9)));
        return [.. off, .. shaped.Where(s => !off.Exists(o => ReferenceEquals(o.Sweep, s.Sweep)))];
    }

    private static IEnumerable<OddRepeat> Outliers(IReadOnlyList<RepeatGroup> family, bool byOffset,
        Func<RepeatedSweep, double> figure)
    {
        double[][] figures = [.. family.Select(g => g.Sweeps.Select(figure).ToArray())];
        int sweeps = figures.Sum(f => f.Length);
        foreach (GroupedOutlier outlier in GroupedOutliers.Of(figures, Math.Max(1, sweeps / Fewest), FalseAlarmTogether))
        {
            RepeatGroup group = family[outlier.Group];
            RepeatedSweep sweep = group.Sweeps[outlier.Place];
            double size = byOffset ? Math.Abs(sweep.Offset.Value) : Strangeness(group, sweep);
            bool small = group.Sweeps.Length < Fewest;
            if (small ? !IsPlain(group, outlier, size) : size < WorthTellingDb)
            {
                continue;
            }

            GeneralisedEsd? alone = small ? null : GeneralisedEsd.Of(figures[outlier.Group],
                Math.Max(1, group.Sweeps.Length / SweepsForEachOutlier), FalseAlarmOfGroup);
            int rank = alone?.Outliers.ToList().IndexOf(outlier.Place) ?? 0;
            if (rank >= 0)
            {
                yield return new OddRepeat
                {
                    Group = group,
                    Sweep = sweep,
                    ByOffset = byOffset,
                    Size = new Decibels(size),
                    SweepCount = sweeps,
                    T = outlier.T,
                    DegreesOfFreedom = outlier.DegreesOfFreedom,
                    Probability = outlier.Probability,
                    Deviate = alone?.Statistics[rank],
                    CriticalDeviate = alone?.CriticalValues[rank],
                };
            }
        }
    }

    private static bool IsPlain(RepeatGroup group, GroupedOutlier outlier, double size) =>
        group.Sweeps.Length >= FewestAmongMany && !group.IsOfPlacements && outlier.DegreesOfFreedom >= ManyDegreesOfFreedom - 1
            && outlier.Probability < FalseAlarmOfSmall && size >= WorthTellingOfSmallDb;

    private static double Strangeness(RepeatGroup group, RepeatedSweep sweep)
    {
        double usual = Sample.Median([.. group.Sweeps.Select(s => s.Shape.Value)]);
        double strange = Math.Sqrt(Math.Max(0, (sweep.Shape.Value * sweep.Shape.Value) - (usual * usual)));
        return strange < OfUsualShape * usual ? 0 : strange;
    }
}
