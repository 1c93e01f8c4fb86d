namespace SweepStats.Alignment;

/// <summary>Neighbouring frequencies at which most of the sweeps of a block stand at one level of their own.</summary>
/// <remarks>
/// They are a limit of what is shown where neighbours agree more often than elsewhere explains, and far longer than the steps of
/// the display that lead to it: the flat end of a smooth curve on a stepped display is 2.7 times as long as the step before it
/// (half-lengths √½ and √1½ − √½ of a parabola), and twice that is none.
/// </remarks>
/// <param name="Start">The first.</param>
/// <param name="Length">How many.</param>
internal readonly record struct FlatRun(int Start, int Length)
{
    /// <summary>Fewest neighbouring frequencies that are a limit.</summary>
    public const int Shortest = 3;

    private const int LongerThanSteps = 6;
    private const double ByChance = 1e-3;

    /// <summary>All runs, in order.</summary>
    /// <param name="standing">Whether most of the sweeps stand there, one a frequency.</param>
    public static IEnumerable<FlatRun> Of(bool[] standing)
    {
        for (int start = 0; start < standing.Length; start++)
        {
            int length = 0;
            while (start + length < standing.Length && standing[start + length])
            {
                length++;
            }

            if (length > 0)
            {
                yield return new FlatRun(start, length);
            }

            start += length;
        }
    }

    /// <summary>How many sweeps are most of them.</summary>
    public static int Most(SweepBlock block) => (block.SweepCount / 2) + 1;

    /// <summary>
    /// How often neighbouring readings agree; one equal pair is granted, so that no display counts as free of them.
    /// </summary>
    /// <param name="block">The sweeps.</param>
    /// <param name="standing">Frequencies within which pairs do not count.</param>
    public static double NeighboursAgree(SweepBlock block, bool[] standing)
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
                    equal += DisplayStep.IsSame(levels[f], levels[f - 1]) ? 1 : 0;
                }
            }
        }

        return (double)equal / pairs;
    }

    /// <summary>Whether it is longer than chance and the steps of the display make it.</summary>
    /// <param name="block">The sweeps.</param>
    /// <param name="agree">How often neighbours agree by chance.</param>
    public bool IsLimit(SweepBlock block, double agree) =>
        Length >= Shortest && block.PointCount * Math.Pow(agree, (Length - 1) * Most(block)) < ByChance
        && Length >= (LongerThanSteps * LongestStepBeside(block)) - 3;

    private int LongestStepBeside(SweepBlock block)
    {
        int longest = 1;
        for (int j = 0; j < block.SweepCount; j++)
        {
            ReadOnlySpan<double> levels = block[j];
            longest = Math.Max(longest, Math.Max(Step(levels, Start - 1, -1), Step(levels, Start + Length, 1)));
        }

        return longest;
    }

    private static int Step(ReadOnlySpan<double> levels, int from, int direction)
    {
        int length = 0;
        for (int f = from; f >= 0 && f < levels.Length && DisplayStep.IsSame(levels[f], levels[from]); f += direction)
        {
            length++;
        }

        return length;
    }
}
