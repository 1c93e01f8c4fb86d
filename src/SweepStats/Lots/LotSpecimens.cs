using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>The specimens of a campaign in their lots.</summary>
internal sealed class LotSpecimens
{
    public LotSpecimens(FrequencyGrid grid, ImmutableArray<SpecimenSweeps> specimens)
    {
        (Grid, Specimens, Design) = (grid, specimens, LotDesign.Of(specimens));
        Lots = [.. specimens.Select(s => s.Name.Lot).Distinct()];
        LotOf = [.. specimens.Select(s => Lots.IndexOf(s.Name.Lot))];
    }

    public FrequencyGrid Grid { get; }

    public ImmutableArray<SpecimenSweeps> Specimens { get; }

    public LotDesign Design { get; }

    /// <summary>Names of the lots as they come.</summary>
    public ImmutableArray<string> Lots { get; }

    /// <summary>The lot of each specimen.</summary>
    public int[] LotOf { get; }

    /// <summary>What belongs to the specimens of a lot.</summary>
    public T[] OfLot<T>(int lot, IEnumerable<T> ofSpecimens) => [.. ofSpecimens.Where((_, i) => LotOf[i] == lot)];

    /// <summary>One value a sweep, over all specimens.</summary>
    public double[] BySweep(Func<SpecimenSweeps, int, double> value) => [.. Specimens.SelectMany(s => Enumerable.Range(0, s.SweepCount).Select(j => value(s, j)))];

    /// <summary>Weights of the frequencies of a band where every specimen has a value; 0 elsewhere. They sum to the share of the band that these make up.</summary>
    public double[] ClearWeights(NamedBand band) =>
        [.. LogWeights.Within(Grid, band.Band).Select((w, f) => Specimens.Any(s => s.Bounds[f]) ? 0 : w)];
}
