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
    /// <summary>The flat tops that most of the sweeps share.</summary>
    /// <param name="block">The sweeps.</param>
    /// <param name="others">Other sweeps of the same receiver: where every reading is stuck, they alone show how often its display makes neighbours agree.</param>
    public static Plateau Find(SweepBlock block, IEnumerable<SweepBlock> others)
    {
        int most = FlatRun.Most(block);
        double[] tops = [.. Enumerable.Range(0, block.SweepCount).Select(j => TopLevel.Of(block[j]))];
        bool IsStuck(int j, int f) => DisplayStep.IsSame(block[j][f], tops[j]);
        bool[] stuck = [.. Enumerable.Range(0, block.PointCount).Select(f => Enumerable.Range(0, block.SweepCount).Count(j => IsStuck(j, f)) >= most)];
        double agree = Array.TrueForAll(stuck, s => s)
            ? others.Select(other => FlatRun.NeighboursAgree(other, new bool[stuck.Length])).DefaultIfEmpty(1).Min()
            : FlatRun.NeighboursAgree(block, stuck);
        FlatRun[] flat = [.. FlatRun.Of(stuck).Where(run => run.IsLimit(block, agree))];
        IEnumerable<double> levels = from run in flat
                                     from f in Enumerable.Range(run.Start, run.Length)
                                     from j in Enumerable.Range(0, block.SweepCount)
                                     where IsStuck(j, f)
                                     select tops[j];
        return flat.Length == 0 ? Plateau.None : new Plateau([.. levels.Distinct()], flat.Max(run => run.Length));
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
