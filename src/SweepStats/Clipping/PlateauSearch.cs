using System.Collections.Immutable;
using SweepStats.Alignment;

namespace SweepStats.Clipping;

/// <summary>Finds frequencies at which sweeps stand at their highest level, one beside the other, as those of an overloaded receiver do.</summary>
/// <remarks>
/// Neighbouring readings that agree to the last digit occur by chance on a coarse display, and on its smooth maxima. A plateau counts where chance, at the rate
/// at which neighbours agree elsewhere in the same sweeps, would make one in a thousand campaigns at most, and where it is much longer than the steps that lead up to it.
/// </remarks>
internal static class PlateauSearch
{
    /// <summary>Fewest neighbouring frequencies that make a plateau.</summary>
    public const int Shortest = 3;

    private const double ByChance = 1e-3;

    // The flat top of a smooth curve on a stepped display is 2.7 times as long as the step before it (half-lengths √½ and √1½ − √½ of a parabola); twice that is none.
    private const int LongerThanSteps = 6;

    /// <summary>How many sweeps are most of them.</summary>
    public static int Most(SweepBlock block) => (block.SweepCount / 2) + 1;

    /// <summary>The flat tops that most of the sweeps share.</summary>
    /// <param name="block">The sweeps.</param>
    /// <param name="others">Other sweeps of the same receiver: where every reading is stuck, they alone show how often its display makes neighbours agree.</param>
    public static Plateau Find(SweepBlock block, IEnumerable<SweepBlock> others)
    {
        int most = Most(block);
        double[] tops = [.. Enumerable.Range(0, block.SweepCount).Select(j => TopLevel.Of(block[j]))];
        bool IsStuck(int j, int f) => TopLevel.IsSame(block[j][f], tops[j]);
        bool[] stuck = [.. Enumerable.Range(0, block.PointCount).Select(f => Enumerable.Range(0, block.SweepCount).Count(j => IsStuck(j, f)) >= most)];
        double agree = Array.TrueForAll(stuck, s => s)
            ? others.Select(other => NeighboursAgree(other, new bool[stuck.Length])).DefaultIfEmpty(1).Min()
            : NeighboursAgree(block, stuck);
        FlatRun[] flat = [.. FlatRun.Of(stuck).Where(run => IsPlateau(block, run, agree))];
        IEnumerable<double> levels = from run in flat
                                     from f in Enumerable.Range(run.Start, run.Length)
                                     from j in Enumerable.Range(0, block.SweepCount)
                                     where IsStuck(j, f)
                                     select tops[j];
        return flat.Length == 0 ? Plateau.None : new Plateau([.. levels.Distinct()], flat.Max(run => run.Length));
    }

    private static bool IsPlateau(SweepBlock block, FlatRun run, double agree) =>
        run.Length >= Shortest && block.PointCount * Math.Pow(agree, (run.Length - 1) * Most(block)) < ByChance
        && run.Length >= LongerThanSteps * LongestStepBeside(block, run.Start, run.Length) - 3;

    // One equal pair is granted, so that no display counts as free of them.
    private static double NeighboursAgree(SweepBlock block, bool[] stuck)
    {
        int pairs = 1;
        int equal = 1;
        for (int j = 0; j < block.SweepCount; j++)
        {
            ReadOnlySpan<double> levels = block[j];
            for (int f = 1; f < levels.Length; f++)
            {
                if (!stuck[f] || !stuck[f - 1])
                {
                    pairs++;
                    equal += TopLevel.IsSame(levels[f], levels[f - 1]) ? 1 : 0;
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
        for (int f = from; f >= 0 && f < levels.Length && TopLevel.IsSame(levels[f], levels[from]); f += direction)
        {
            length++;
        }

        return length;
    }

    private readonly record struct FlatRun(int Start, int Length)
    {
        public static IEnumerable<FlatRun> Of(bool[] stuck)
        {
            for (int start = 0; start < stuck.Length; start++)
            {
                int length = 0;
                while (start + length < stuck.Length && stuck[start + length])
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
    }

    /// <summary>Flat tops of a block of sweeps.</summary>
    /// <param name="Levels">Levels at which sweeps stand in them.</param>
    /// <param name="Longest">Neighbouring frequencies in the longest; 0 where there is none.</param>
    public sealed record Plateau(ImmutableArray<double> Levels, int Longest)
    {
        /// <summary>None.</summary>
        public static Plateau None { get; } = new([], 0);
    }
}
