using OxyPlot;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Sheets;

/// <summary>Fewer points where a picture has no room for more; what a claim rests on stays.</summary>
internal static class Thinning
{
    /// <summary>The lowest of each run of neighbours: a dip of one point stays.</summary>
    public static IReadOnlyList<DataPoint> Lowest(IReadOnlyList<DataPoint> points, int most) =>
        points.Count <= most ? points : [.. points.Chunk(Each(points.Count, most)).Select(LowestOf)];

    /// <summary>The outermost edges of each run of neighbours.</summary>
    public static IReadOnlyList<Slice> Outermost(IReadOnlyList<Slice> slices, int most) =>
        slices.Count <= most ? slices : [.. slices.Chunk(Each(slices.Count, most)).Select(Joined)];

    /// <summary>Places of so many values at most, of each run of neighbours the lowest.</summary>
    public static int[] Places(int count, int most, Func<int, double> value)
    {
        IEnumerable<int> all = Enumerable.Range(0, count);
        return count <= most ? [.. all] : [.. all.Chunk(Each(count, most))
            .Select(run => run.MinBy(i => value(i) is var v && double.IsNaN(v) ? double.PositiveInfinity : v))];
    }

    private static DataPoint LowestOf(DataPoint[] points) =>
        points.Where(p => double.IsFinite(p.Y)).OrderBy(p => p.Y).FirstOrDefault(points[0]);

    private static Slice Joined(Slice[] slices)
    {
        Slice[] known = [.. slices.Where(s => double.IsFinite(s.Low))];
        return known.Length == 0 ? slices[0] : new Slice(slices[0].X, known.Min(s => s.Low), known.Max(s => s.High));
    }

    private static int Each(int count, int most) => (count + most - 1) / most;
}
