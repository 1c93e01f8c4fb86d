using SweepStats.Alignment;

namespace SweepStats.Clipping;

/// <summary>
/// Finds frequencies at which sweeps stand at their highest level, one beside the other, as those of an overloaded receiver do.
/// </summary>
/// <remarks>
/// Neighbouring readings that agree to the last digit occur by chance on a coarse display, and on its smooth maxima. A plateau
/// counts where chance, at the rate at which neighbours agree elsewhere in the same sweeps, would make one in a thousand
/// campaigns at most, and where it is much longer than the steps that lead up to it.
/// </remarks>
internal static class PlateauSearch
{
    /// <summary>The flat tops that most of the sweeps share.</summary>
    /// <param name="block">The sweeps.</param>
    /// <param name="others">
    /// Other sweeps of the same receiver: where every reading is stuck, they alone show how often its display makes neighbours
    /// agree.
    /// </param>
    public static Plateau Find(SweepBlock block, IEnumerable<SweepBlock> others)
    {
        int most = FlatRun.Most(block);
        double[] tops = [.. Enumerable.Range(0, block.SweepCount).Select(j => block.ExtremesDb(j).Highest)];
        bool IsStuck(int j, int f) => DisplayStep.IsSame(block[j][f], tops[j]);
        bool[] stuck = Array.ConvertAll(Standing(block, tops), s => s >= most);
        var agree = new Lazy<double>(() => Array.TrueForAll(stuck, s => s)
            ? others.Select(other => FlatRun.NeighboursAgree(other, new bool[stuck.Length])).DefaultIfEmpty(1).Min()
            : FlatRun.NeighboursAgree(block, stuck));
        FlatRun[] flat = [.. FlatRun.Of(stuck).Where(run => run.Length >= FlatRun.Shortest && run.IsLimit(block, agree.Value))];
        IEnumerable<double> levels = from run in flat
                                     from f in Enumerable.Range(run.Start, run.Length)
                                     from j in Enumerable.Range(0, block.SweepCount)
                                     where IsStuck(j, f)
                                     select tops[j];
        return flat.Length == 0 ? Plateau.None : new Plateau([.. levels.Distinct()], flat.Max(run => run.Length));
    }

    // How many sweeps stand at their own highest level at each frequency.
    private static int[] Standing(SweepBlock block, double[] tops)
    {
        var standing = new int[block.PointCount];
        for (int j = 0; j < tops.Length; j++)
        {
            ReadOnlySpan<double> levels = block[j];
            for (int f = 0; f < levels.Length; f++)
            {
                standing[f] += DisplayStep.IsSame(levels[f], tops[j]) ? 1 : 0;
            }
        }

        return standing;
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
