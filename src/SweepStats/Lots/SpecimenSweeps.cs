using SweepStats.Alignment;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>Shielding of one specimen sweep by sweep, for comparing specimens and lots of one campaign.</summary>
/// <remarks>
/// A sweep's shielding is that of the specimen, moved by how far the sweep's level lies from the mean level times the slope of the noise correction. Reference and
/// floor are the same for all specimens of a campaign, so their errors move all alike and drop out of every comparison within it. Where only a bound is known,
/// sweeps have no value and the bound stands for the specimen. Unit: dB.
/// </remarks>
internal sealed class SpecimenSweeps
{
    private readonly double[][] _sweeps;

    private SpecimenSweeps(SpecimenName name, double[][] sweeps, int[] placements, (double[] Values, bool[] Bounds) specimen)
    {
        (Name, _sweeps, Placements, Values, Bounds) = (name, sweeps, placements, specimen.Values, specimen.Bounds);
    }

    public SpecimenName Name { get; }

    /// <summary>Placement of each sweep, numbered from 0.</summary>
    public int[] Placements { get; }

    /// <summary>When the first sweep was taken; null where not noted.</summary>
    public DateTimeOffset? TakenAt { get; private init; }

    public int SweepCount => _sweeps.Length;

    /// <summary>Shielding at each frequency, or the bound that it lies above; not a number where nothing is known.</summary>
    public double[] Values { get; }

    /// <summary>Where the value is a bound.</summary>
    public bool[] Bounds { get; }

    /// <summary>Shielding of a sweep at a frequency; the bound where only that is known.</summary>
    public double At(int sweep, int f) => _sweeps[sweep][f];

    /// <summary>Whether repeats are placements: some specimen was placed twice. Else they are sweeps.</summary>
    public static bool RepeatByPlacement(IEnumerable<SpecimenSweeps> specimens) => specimens.Any(s => s.Placements.Max() > 0);

    /// <summary>The means of its repeats.</summary>
    /// <param name="sweeps">One value a sweep.</param>
    /// <param name="byPlacement">What counts as a repeat.</param>
    public double[] Repeats(double[] sweeps, bool byPlacement) =>
        byPlacement ? [.. sweeps.Zip(Placements).GroupBy(s => s.Second, s => s.First).Select(p => p.Average())] : sweeps;

    public static SpecimenSweeps Of(SpecimenBlock block, ShieldingCurve curve)
    {
        int points = curve.Readings.Length;
        var values = new double[points];
        var bounds = new bool[points];
        double[][] sweeps = [.. Enumerable.Range(0, block.Block.SweepCount).Select(_ => new double[points])];
        for (int f = 0; f < points; f++)
        {
            (values[f], bounds[f]) = curve.Readings[f].ValueOrBound;
            double slope = bounds[f] ? 0 : curve.Spread?.CoveredSlope(f) ?? 0;
            double mean = curve.Readings[f].Evidence.CoveredDb;
            for (int j = 0; j < sweeps.Length; j++)
            {
                sweeps[j][f] = values[f] - (slope * (block.Block[j][f] - mean));
            }
        }

        return new SpecimenSweeps(curve.Name, sweeps, block.Block.Placements(), (values, bounds)) { TakenAt = block.Block.Sweeps.Min(s => s.TakenAt) };
    }
}
