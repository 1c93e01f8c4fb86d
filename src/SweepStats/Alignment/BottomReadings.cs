namespace SweepStats.Alignment;

/// <summary>
/// Finds frequencies at which sweeps stand at the bottom of what the receiver shows, or do not live at all: the level there is
/// at most what is shown.
/// </summary>
/// <remarks>
/// Sweeps without any scatter over a dozen points and more are not alive. Else their lowest level is a bottom where readings
/// are cut off at it (<see cref="BottomTies"/>), where the other sweeps end at the very same level and are cut off there, or
/// where neighbours stand at it side by side in most of the sweeps, more of them than the rate at which neighbours agree
/// elsewhere explains, and far more than the steps of the display that lead down to it (<see cref="FlatRun"/>).
/// </remarks>
public static class BottomReadings
{
    /// <summary>Fewest frequencies over which a live sweep shows that it moves.</summary>
    public const int FewestToMove = 12;

    /// <summary>Whether each frequency is one of them; empty where none is.</summary>
    /// <param name="block">The sweeps.</param>
    /// <param name="others">
    /// Other sweeps of the same receiver, also those of the floor: they show how often its display makes neighbours agree, and
    /// where it ends.
    /// </param>
    public static ImmutableArray<bool> Find(SweepBlock block, IEnumerable<SweepBlock> others)
    {
        ArgumentNullException.ThrowIfNull(block);
        ArgumentNullException.ThrowIfNull(others);
        if (StandsStill(block))
        {
            return [.. Enumerable.Repeat(true, block.PointCount)];
        }

        SweepBlock[] rest = [.. others];
        BottomTies bottom = BottomTies.Of(block);
        int[] standing = Standing(block, bottom);
        int enough = FlatRun.Most(block);
        bool[] most = Array.ConvertAll(standing, s => s >= enough);
        bool limit =
            bottom.IsLimit || Array.Exists(rest, other => EndsAt(other, bottom.LevelDb)) || HasFlatBottom(block, most, rest);
        return limit ? [.. standing.Select(s => s > 0)] : [];
    }

    /// <summary>Whether each sweep stands at one level over all its frequencies, a dozen at least.</summary>
    public static bool StandsStill(SweepBlock block)
    {
        ArgumentNullException.ThrowIfNull(block);
        for (int j = 0; j < block.SweepCount; j++)
        {
            if (block.PointCount < FewestToMove || block[j].IndexOfAnyExcept(block[j][0]) >= 0)
            {
                return false;
            }
        }

        return true;
    }

    private static bool EndsAt(SweepBlock other, double levelDb) =>
        Math.Abs(other.LowestDb - levelDb) <= DisplayStep.Same && BottomTies.Of(other).IsLimit;

    // How many sweeps stand at the bottom at each frequency.
    private static int[] Standing(SweepBlock block, BottomTies bottom)
    {
        var standing = new int[block.PointCount];
        for (int j = 0; j < block.SweepCount; j++)
        {
            ReadOnlySpan<double> levels = BottomTies.ReachesDown(block, j, bottom.LevelDb) ? block[j] : [];
            for (int f = 0; f < levels.Length; f++)
            {
                standing[f] += BottomTies.IsAt(levels[f], bottom.LevelDb) ? 1 : 0;
            }
        }

        return standing;
    }

    private static bool HasFlatBottom(SweepBlock block, bool[] most, SweepBlock[] others)
    {
        // The display that makes neighbours agree most often is taken: noise that was averaged long stands still on a coarse one.
        var none = new bool[most.Length];
        var agree = new Lazy<double>(() =>
            others.Select(b => FlatRun.NeighboursAgree(b, none)).Append(FlatRun.NeighboursAgree(block, most)).Max());
        return FlatRun.Of(most).Any(run => run.Length >= FlatRun.Shortest && run.IsLimit(block, agree.Value));
    }
}
