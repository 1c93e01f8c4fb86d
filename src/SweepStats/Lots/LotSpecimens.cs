using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>The specimens of a campaign in their lots.</summary>
internal sealed class LotSpecimens
{
    private readonly int[][] _members;
    private readonly int _sweeps;

    public LotSpecimens(FrequencyGrid grid, ImmutableArray<SpecimenSweeps> specimens)
    {
        (Grid, Specimens, Design) = (grid, specimens, LotDesign.Of(specimens));
        Lots = [.. specimens.Select(s => s.Name.Lot).Distinct()];
        LotOf = [.. specimens.Select(s => Lots.IndexOf(s.Name.Lot))];
        _members = [.. Lots.Select((_, l) => Enumerable.Range(0, LotOf.Length).Where(i => LotOf[i] == l).ToArray())];
        _sweeps = specimens.Sum(s => s.SweepCount);
    }

    public FrequencyGrid Grid { get; }

    public ImmutableArray<SpecimenSweeps> Specimens { get; }

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

    /// <summary>One value a sweep, over all specimens.</summary>
    public double[] BySweep(Func<SpecimenSweeps, int, double> value) => [.. Specimens.SelectMany(s => Enumerable.Range(0, s.SweepCount).Select(j => value(s, j)))];

    /// <summary>The shielding of each sweep at a frequency, over all specimens.</summary>
    public double[] BySweep(int f)
    {
        var values = new double[_sweeps];
        int next = 0;
        foreach (SpecimenSweeps specimen in Specimens)
        {
            for (int j = 0; j < specimen.SweepCount; j++)
            {
                values[next++] = specimen.At(j, f);
            }
        }

        return values;
    }

    /// <summary>Weights of the frequencies of a band where every specimen has a value; 0 elsewhere. They sum to the share of the band that these make up.</summary>
    public double[] ClearWeights(NamedBand band) =>
        [.. LogWeights.Within(Grid, band.Band).Select((w, f) => Specimens.Any(s => s.Bounds[f]) ? 0 : w)];
}
