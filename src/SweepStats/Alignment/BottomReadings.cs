using System.Collections.Immutable;

namespace SweepStats.Alignment;

/// <summary>
/// Finds frequencies at which sweeps stand at the bottom of what the receiver shows, or do not live at all: the level there is
/// at most what is shown.
/// </summary>
/// <remarks>
/// Sweeps without any scatter over a dozen points and more are not alive. Else their lowest level is a bottom where readings
/// are cut off at it (<see cref="BottomTies"/>), where the other sweeps end at the very same level and are cut off there, or
/// where neighbours stand at it side by side in most of the sweeps, more of them than the rate at which neighbours agree
/// elsewhere explains, and far more than the steps of the display that lead down to it: the flat bottom of a smooth curve on a
/// stepped display is 2.7 times as long as the step before it (half-lengths √½ and √1½ − √½ of a parabola), and twice that is
/// none.
/// </remarks>
public static class BottomReadings
{
    /// <summary>Fewest frequencies over which a live sweep shows that it moves.</summary>
    public const int FewestToMove = 12;

    private const int Shortest = 3;
    private const int LongerThanSteps = 6;
    private const double ByChance = 1e-3;

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
        int[] standing = [.. Enumerable.Range(0, block.PointCount).Select(f => Standing(block, bottom, f))];
        bool[] most = [.. standing.Select(s => s > block.SweepCount / 2)];
        bool limit = bottom.IsLimit || Array.Exists(rest, other => EndsAt(other, bottom.LevelDb)) || HasFlatBottom(block, most, rest);
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
        Math.Abs(BottomTies.Lowest(other) - levelDb) <= DisplayStep.Same && BottomTies.Of(other).IsLimit;

    private static int Standing(SweepBlock block, BottomTies bottom, int f)
    {
        int standing = 0;
        for (int j = 0; j < block.SweepCount; j++)
        {
            standing += BottomTies.IsAt(block[j][f], bottom.LevelDb) ? 1 : 0;
        }

        return standing;
    }

    private static bool HasFlatBottom(SweepBlock block, bool[] most, SweepBlock[] others)
    {
        // The display that makes neighbours agree most often is taken: noise that was averaged long stands still on a coarse one.
        var none = new bool[most.Length];
        var agree = new Lazy<double>(() => others.Select(b => NeighboursAgree(b, none)).Append(NeighboursAgree(block, most)).Max());
        int sweeps = (block.SweepCount / 2) + 1;
        for (int start = 0; start < most.Length; start++)
        {
            int length = most.AsSpan(start).IndexOf(false) is >= 0 and var end ? end : most.Length - start;
            if (length >= Shortest && block.PointCount * Math.Pow(agree.Value, (length - 1) * sweeps) < ByChance
                && length >= (LongerThanSteps * LongestStepBeside(block, start, length)) - 3)
            {
                return true;
            }

            start += length;
        }

        return false;
    }

    // One equal pair is granted, so that no display counts as free of them.
    private static double NeighboursAgree(SweepBlock block, bool[] standing)
    {
        int pairs = 1;
        int equal = 1;
        for (int j = 0; j < block.SweepCount; j++)
        {
            ReadOnlySpan<double> levels = block[j];
            for (int f = 1; f < levels.Length; f++)
            {
                if (!standing[f] || !standing[f - 1])
                {
                    pairs++;
                    equal += Math.Abs(levels[f] - levels[f - 1]) <= DisplayStep.Same ? 1 : 0;
                }
            }
        }

        return (double)equal / pairs;
    }

    private static int LongestStepBeside(SweepBlock block, int start, int length)
    {
        int longest = 1;
        for (int j = 0; j < block.SweepCount; j++)
        {
            ReadOnlySpan<double> levels = block[j];
            longest = Math.Max(longest, Math.Max(Step(levels, start - 1, -1), Step(levels, start + length, 1)));
        }

        return longest;
    }

    private static int Step(ReadOnlySpan<double> levels, int from, int direction)
    {
        int length = 0;
        for (int f = from; f >= 0 && f < levels.Length && Math.Abs(levels[f] - levels[from]) <= DisplayStep.Same; f += direction)
        {
            length++;
        }

        return length;
    }
}
