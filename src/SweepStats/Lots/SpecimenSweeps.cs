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

    public static SpecimenSweeps Of(SpecimenBlock block, ShieldingCurve curve)
    {
        int points = curve.Readings.Length;
        var values = new double[points];
        var bounds = new bool[points];
        double[][] sweeps = [.. Enumerable.Range(0, block.Block.SweepCount).Select(_ => new double[points])];
        for (int f = 0; f < points; f++)
        {
            (values[f], bounds[f]) = Value(curve.Readings[f]);
            double slope = bounds[f] ? 0 : curve.Spread?.CoveredSlope(f) ?? 0;
            double mean = curve.Readings[f].Evidence.CoveredDb;
            for (int j = 0; j < sweeps.Length; j++)
            {
                sweeps[j][f] = values[f] - (slope * (block.Block[j][f] - mean));
            }
        }

        return new SpecimenSweeps(curve.Name, sweeps, block.Block.Placements(), (values, bounds)) { TakenAt = block.Block.Sweeps.Min(s => s.TakenAt) };
    }

    private static (double Value, bool Bound) Value(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m => (m.Shielding.Value.Value, false),
        ShieldingReading.Unrepeated u => (u.Indication.Value, false),
        ShieldingReading.AtLeast b => (b.Bound.Value, true),
        _ => (double.NaN, true),
    };
}
