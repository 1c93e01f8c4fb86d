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
    private readonly double[] _slopes;
    private readonly double[] _means;

    private SpecimenSweeps(SpecimenBlock block, ShieldingCurve curve)
    {
        int points = curve.Readings.Length;
        (Name, _block, Placements) = (curve.Name, block.Block, block.Block.Placements());
        (_slopes, _means, Values, Bounds) = (new double[points], new double[points], new double[points], new bool[points]);
        TakenAt = _block.Sweeps.Min(s => s.TakenAt);
        for (int f = 0; f < points; f++)
        {
            (Values[f], Bounds[f]) = curve.Readings[f].ValueOrBound;
            _slopes[f] = Bounds[f] ? 0 : curve.Spread?.CoveredSlope(f) ?? 0;
            _means[f] = curve.Readings[f].Evidence.CoveredDb;
        }
    }

    public SpecimenName Name { get; }

    /// <summary>Placement of each sweep, numbered from 0.</summary>
    public int[] Placements { get; }

    /// <summary>When the first sweep was taken; null where not noted.</summary>
    public DateTimeOffset? TakenAt { get; }

    public int SweepCount => _block.SweepCount;

    /// <summary>Shielding at each frequency, or the bound that it lies above; not a number where nothing is known.</summary>
    public double[] Values { get; }

    /// <summary>Where the value is a bound.</summary>
    public bool[] Bounds { get; }

    /// <summary>Shielding of a sweep at neighbouring frequencies; the bound where only that is known.</summary>
    /// <param name="sweep">Its place.</param>
    /// <param name="first">First of the frequencies.</param>
    /// <param name="shielding">Room for the values; as many frequencies are read.</param>
    public void Read(int sweep, int first, Span<double> shielding)
    {
        int count = shielding.Length;
        ReadOnlySpan<double> levels = _block[sweep].Slice(first, count), values = Values.AsSpan(first, count);
        ReadOnlySpan<double> slopes = _slopes.AsSpan(first, count), means = _means.AsSpan(first, count);
        for (int k = 0; k < shielding.Length; k++)
        {
            shielding[k] = values[k] - (slopes[k] * (levels[k] - means[k]));
        }
    }

    /// <summary>Weighted sum over the frequencies for each sweep.</summary>
    /// <param name="weights">One a frequency; what one of weight 0 holds does not matter.</param>
    public double[] Sums(double[] weights)
    {
        var sums = new double[SweepCount];
        var shielding = new double[weights.Length];
        for (int j = 0; j < sums.Length; j++)
        {
            Read(j, 0, shielding);
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

    public static SpecimenSweeps Of(SpecimenBlock block, ShieldingCurve curve) => new(block, curve);
}
