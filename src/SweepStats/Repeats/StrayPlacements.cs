using SweepStats.Alignment;
using SweepStats.Floor;
using SweepStats.Statistics;

namespace SweepStats.Repeats;

/// <summary>Finds placements that lie farther from the others of their specimen than putting back explains.</summary>
/// <remarks>
/// How far putting back moves the level is not known beforehand, and three placements of one specimen hardly show it: their own
/// spread grows with the very one that is off. All specimens of a campaign are put back by the same hands in the same frame, so
/// the level of each placement about the mean of its specimen is held against the spread of all, without the ones that are off,
/// and for as many as there are (<see cref="GroupedOutliers"/>). Sweeps of one placement say nothing of it, so they do not
/// count. Specimens need not spread alike, therefore the others of its own must also agree among each other. Where a campaign
/// has too few placements for any chance to be told, a distance that no putting back makes is told all the same:
/// what cannot be proven must not pass unseen either.
/// </remarks>
internal static class StrayPlacements
{
    /// <summary>Chance of naming any placement of a campaign where none is off, in normal scatter.</summary>
    public const double FalseAlarm = 0.005;

    /// <summary>
    /// Least distance in dB that is told where the spread shows it: less hardly changes what is claimed, and the interval
    /// covers it.
    /// </summary>
    public const double WorthTellingDb = 2;

    /// <summary>
    /// Distance in dB that is told by itself: four times the power (judgement, no source). Putting back spreads by a few tenths
    /// of a dB up to one.
    /// </summary>
    public const double TooFarDb = 6;

    // Of all placements at most so many are looked at for being off.
    private const int OneIn = 3;

    // A gap by itself is one where it is so much wider than either side of it.
    private const double GapOverRange = 3;

    /// <summary>At most one a specimen, by specimen; empty where no specimen has two placements that can be seen.</summary>
    public static ImmutableArray<StrayPlacement> Among(AlignedCampaign campaign, NoiseFloor? floor)
    {
        PlacementLevels[] all = [.. campaign.Covered.Select(c => PlacementLevels.Of(c, floor)).OfType<PlacementLevels>()];
        int count = all.Sum(levels => levels.Db.Length);
        IReadOnlyList<GroupedOutlier> found = count == 0 ? []
            : GroupedOutliers.Of([.. all.Select(l => l.Db)], Math.Max(1, count / OneIn), FalseAlarm);
        ILookup<int, GroupedOutlier> outliers = found.ToLookup(o => o.Group);
        return [.. all.Select((levels, i) => ByChance(levels, [.. outliers[i]]) ?? ByGap(levels)).OfType<StrayPlacement>()];
    }

    private static StrayPlacement? ByChance(PlacementLevels levels, GroupedOutlier[] outliers)
    {
        if (outliers.Length == 0)
        {
            return null;
        }

        GroupedOutlier least = outliers.MinBy(o => o.Probability)!;
        StrayPlacement parted = Parted(levels, [.. outliers.Select(o => o.Place).Order()]);
        StrayPlacement? told = IsApart(parted) ? parted : Ends(levels);
        return told is null ? null : told with { Test = new StrayTest(least.T, least.DegreesOfFreedom, least.Probability) };
    }

    private static bool IsApart(StrayPlacement stray)
    {
        double[] off = [.. stray.Off.Select(p => stray.Levels.Db[p])], others = [.. stray.Others.Select(p => stray.Levels.Db[p])];
        double gap = off.Min(p => others.Min(o => Math.Abs(p - o)));
        return Math.Abs(stray.AboveDb) >= WorthTellingDb && gap >= others.Max() - others.Min();
    }

    // Chance does not explain how far they spread, but no side stands out: the highest is held against the lowest.
    private static StrayPlacement? Ends(PlacementLevels levels)
    {
        int lowest = Array.IndexOf(levels.Db, levels.Db.Min()), highest = Array.IndexOf(levels.Db, levels.Db.Max());
        StrayPlacement ends = Halves(levels, [highest], [lowest]);
        return ends.AboveDb >= 2 * WorthTellingDb ? ends : null;
    }

    // Where the widest gap parts the placements; the whole range where no gap stands out.
    private static StrayPlacement? ByGap(PlacementLevels levels)
    {
        int[] rising = [.. Enumerable.Range(0, levels.Db.Length).OrderBy(p => levels.Db[p])];
        double At(int place) => levels.Db[rising[place]];
        if (At(rising.Length - 1) - At(0) < TooFarDb)
        {
            return null;
        }

        int upper = Enumerable.Range(1, rising.Length - 1).MaxBy(i => At(i) - At(i - 1));
        double ranges = Math.Max(At(upper - 1) - At(0), At(rising.Length - 1) - At(upper));
        bool parts = At(upper) - At(upper - 1) >= Math.Max(TooFarDb, GapOverRange * ranges);
        return parts ? Parted(levels, 2 * upper > rising.Length ? rising[upper..] : rising[..upper])
            : Halves(levels, [rising[^1]], [rising[0]]);
    }

    // Those that are off are the fewer; of equally many, neither side can be named.
    private static StrayPlacement Parted(PlacementLevels levels, int[] off) => 2 * off.Length < levels.Db.Length
        ? new StrayPlacement { Levels = levels, Off = [.. off.Order()], IsSingledOut = true, Test = null }
        : Halves(levels, off, [.. Enumerable.Range(0, levels.Db.Length).Except(off)]);

    private static StrayPlacement Halves(PlacementLevels levels, int[] one, int[] other)
    {
        PlacementLevels seen = levels with
        {
            Names = [.. one.Concat(other).Select(p => levels.Names[p])],
            Db = [.. one.Concat(other).Select(p => levels.Db[p])],
        };
        int[] first = [.. Enumerable.Range(0, one.Length)], rest = [.. Enumerable.Range(one.Length, other.Length)];
        bool above = first.Average(p => seen.Db[p]) >= rest.Average(p => seen.Db[p]);
        return new StrayPlacement { Levels = seen, Off = [.. above ? first : rest], IsSingledOut = false, Test = null };
    }
}
