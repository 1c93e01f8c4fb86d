using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>Shielding of one specimen sweep by sweep, for comparing specimens and lots of one campaign.</summary>
/// <remarks>
/// A sweep's shielding is that of the specimen, moved by how far the sweep's level lies from the mean level times the slope of
/// the noise correction. Reference and floor are the same for all specimens of a campaign, so their errors move all alike and
/// drop out of every comparison within it. Where only a bound is known, sweeps have no value and the bound stands for the
/// specimen. Unit: dB.
/// </remarks>
internal sealed class SpecimenSweeps
{
    private readonly SweepBlock _block;
    private readonly ShieldingCurve _curve;

    private SpecimenSweeps(SpecimenBlock block, ShieldingCurve curve)
    {
        (Name, _block, _curve, Placements) = (curve.Name, block.Block, curve, block.Block.Placements());
        (Values, Bounds) = (curve.Readings.ValuesDb.ToArray(), new bool[curve.Readings.Length]);
        TakenAt = _block.Sweeps.Min(s => s.TakenAt);
        for (int f = 0; f < Bounds.Length; f++)
        {
            Bounds[f] = curve.Readings.IsBound(f);
        }
    }

    /// <summary>The specimen's name.</summary>
    public SpecimenName Name { get; }

    /// <summary>Placement of each sweep, numbered from 0.</summary>
    public int[] Placements { get; }

    /// <summary>When the first sweep was taken; null where not noted.</summary>
    public DateTimeOffset? TakenAt { get; }

    /// <summary>Covered sweeps of the specimen.</summary>
    public int SweepCount => _block.SweepCount;

    /// <summary>Shielding at each frequency, or the bound that it lies above; not a number where nothing is known.</summary>
    public double[] Values { get; }

    /// <summary>Where the value is a bound.</summary>
    public bool[] Bounds { get; }

    /// <summary>Its sweeps at neighbouring frequencies.</summary>
    /// <param name="first">Place of the first frequency.</param>
    /// <param name="count">How many.</param>
    public SweepStretch At(int first, int count)
    {
        double[] slopes = new double[count], means = new double[count];
        _curve.Readings.ReadCoveredDb(first, means);
        _curve.Spread?.ReadCoveredSlopes(first, slopes);
        for (int k = 0; k < count; k++)
        {
            slopes[k] = Bounds[first + k] ? 0 : slopes[k];
        }

        return new SweepStretch(_block, first, Values.AsMemory(first, count), slopes, means);
    }

    /// <summary>Weighted sum over the frequencies for each sweep.</summary>
    /// <param name="weights">One a frequency; what one of weight 0 holds does not matter.</param>
    public double[] Sums(double[] weights)
    {
        var sums = new double[SweepCount];
        var shielding = new double[weights.Length];
        SweepStretch all = At(0, weights.Length);
        for (int j = 0; j < sums.Length; j++)
        {
            all.Read(j, shielding);
            sums[j] = LogWeights.Mean(weights, shielding);
        }

        return sums;
    }

    /// <summary>Whether repeats are placements: some specimen was placed twice. Else they are sweeps.</summary>
    public static bool RepeatByPlacement(IEnumerable<SpecimenSweeps> specimens) => specimens.Any(s => s.Placements.Max() > 0);

    /// <summary>The means of its repeats.</summary>
    /// <param name="sweeps">One value a sweep.</param>
    /// <param name="byPlacement">What counts as a repeat.</param>
    public double[] Repeats(double[] sweeps, bool byPlacement) =>
        byPlacement ? [.. sweeps.Zip(Placements).GroupBy(s => s.Second, s => s.First).Select(p => p.Average())] : sweeps;

    /// <summary>The sweeps of a block with the curve that was found from them; both are of the same specimen.</summary>
    public static SpecimenSweeps Of(SpecimenBlock block, ShieldingCurve curve) => new(block, curve);
}
