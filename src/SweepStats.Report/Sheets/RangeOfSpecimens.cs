using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Report.Sheets;

/// <summary>
/// What is known of all specimens at each frequency, of a single one its interval, and how far the set-up can see.
/// </summary>
internal sealed class RangeOfSpecimens
{
    /// <summary>Takes all specimens of a result; one alone is shown with its interval in place of a range.</summary>
    public RangeOfSpecimens(AnalysisResult result)
    {
        FrequencyGrid grid = result.Campaign.Grid;
        IEnumerable<int> places = Enumerable.Range(0, grid.Count);
        bool single = result.Curves.Length == 1;
        Slices = [.. places.Select(i => single ? Interval(result.Curves[0].Readings[i]) : Among(result.Curves, i))];
        IEnumerable<int> open = places.Where(i => result.Curves.Any(c => c.Readings[i] is ShieldingReading.AtLeast));
        Open = [.. open.Select(i => new DataPoint(grid[i].Value, Slices[i].High))];
        Usable = [.. places.Select(i => new DataPoint(grid[i].Value, Reach(result.Curves, i)))];
    }

    /// <summary>From lowest to highest, bounds standing in for values; not a number where nothing is known.</summary>
    public ImmutableArray<Slice> Slices { get; }

    /// <summary>Upper ends that are no ends, since of some specimen only a bound is known.</summary>
    public ImmutableArray<DataPoint> Open { get; }

    /// <summary>The smallest dynamic range of all specimens; not a number where none is known.</summary>
    public ImmutableArray<DataPoint> Usable { get; }

    private static Slice Among(ImmutableArray<ShieldingCurve> curves, int point)
    {
        (double low, double high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (ShieldingCurve curve in curves)
        {
            double known = Known(curve.Readings[point]);
            if (double.IsFinite(known))
            {
                (low, high) = (Math.Min(low, known), Math.Max(high, known));
            }
        }

        double at = curves[0].Readings[point].Evidence.At.Value;
        return low <= high ? new Slice(at, low, high) : new Slice(at, double.NaN, double.NaN);
    }

    /// <summary>The value, or the bound that stands in for it; not a number where neither is known.</summary>
    public static double Known(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured measured => measured.Shielding.Value.Value,
        ShieldingReading.AtLeast bound => bound.Bound.Value,
        ShieldingReading.Unrepeated single => single.Indication.Value,
        _ => double.NaN,
    };

    private static Slice Interval(ShieldingReading reading) => reading is ShieldingReading.Measured { Shielding: var known }
        ? new Slice(reading.Evidence.At.Value, known.Low.Value, known.High.Value)
        : new Slice(reading.Evidence.At.Value, double.NaN, double.NaN);

    private static double Reach(ImmutableArray<ShieldingCurve> curves, int point)
    {
        IEnumerable<double> all = curves.Select(c => c.Readings[point].Evidence.DynamicRange?.Value).OfType<double>();
        double[] known = [.. all.Where(double.IsFinite)];
        return known.Length == 0 ? double.NaN : known.Min();
    }
}
