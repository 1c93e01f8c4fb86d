using SweepStats.Bands;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>The specimens of a campaign in their lots.</summary>
internal sealed class LotSpecimens
{
    private readonly int[][] _members;

    /// <summary>Sorts the specimens by their lots, in the order in which these come.</summary>
    public LotSpecimens(FrequencyGrid grid, ImmutableArray<SpecimenSweeps> specimens)
    {
        (Grid, Specimens, Design) = (grid, specimens, LotDesign.Of(specimens));
        Lots = [.. specimens.Select(s => s.Name.Lot).Distinct()];
        LotOf = [.. specimens.Select(s => Lots.IndexOf(s.Name.Lot))];
        _members = [.. Lots.Select((_, l) => Enumerable.Range(0, LotOf.Length).Where(i => LotOf[i] == l).ToArray())];
    }

    /// <summary>Frequencies of the campaign.</summary>
    public FrequencyGrid Grid { get; }

    /// <summary>The specimens, in the order of the campaign.</summary>
    public ImmutableArray<SpecimenSweeps> Specimens { get; }

    /// <summary>Which variances the sweeps of the specimens can tell apart.</summary>
    public LotDesign Design { get; }

    /// <summary>Names of the lots as they come.</summary>
    public ImmutableArray<string> Lots { get; }

    /// <summary>The lot of each specimen.</summary>
    public int[] LotOf { get; }

    /// <summary>What belongs to the specimens of a lot.</summary>
    public T[] OfLot<T>(int lot, ReadOnlySpan<T> ofSpecimens)
    {
        int[] members = _members[lot];
        var own = new T[members.Length];
        for (int i = 0; i < own.Length; i++)
        {
            own[i] = ofSpecimens[members[i]];
        }

        return own;
    }

    /// <summary>Weighted sum over the frequencies for each sweep of all specimens.</summary>
    /// <param name="weights">One a frequency.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public double[] BySweep(double[] weights, int threads) =>
        [.. SideBySide.Of(Specimens.Length, threads, i => Specimens[i].Sums(weights)).SelectMany(sums => sums)];

    /// <summary>
    /// Weights of the frequencies of a band where every specimen has a value; 0 elsewhere. They sum to the share of the band that
    /// these make up.
    /// </summary>
    public double[] ClearWeights(NamedBand band) =>
        [.. LogWeights.Within(Grid, band.Band).Select((w, f) => Specimens.Any(s => s.Bounds[f]) ? 0 : w)];
}
