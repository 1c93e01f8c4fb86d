using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>Thins long lines to what a pixel column can show, keeping every extreme.</summary>
internal static class Decimation
{
    /// <summary>Shorter lines are left alone: thinning 1 601 points saves nothing.</summary>
    public const int Threshold = 2000;

    /// <summary>First, lowest, highest and last point of each pixel column, in order of the line.</summary>
    public static List<ScreenPoint> Line(List<ScreenPoint> points)
    {
        if (points.Count <= Threshold)
        {
            return points;
        }

        List<ScreenPoint> kept = [];
        foreach ((int from, int to) in Columns(points))
        {
            int low = from;
            int high = from;
            for (int i = from; i < to; i++)
            {
                low = points[i].Y < points[low].Y ? i : low;
                high = points[i].Y > points[high].Y ? i : high;
            }

            foreach (int i in new SortedSet<int> { from, low, high, to - 1 })
            {
                kept.Add(points[i]);
            }
        }

        return kept;
    }

    /// <summary>One edge of a band: the outermost point of each pixel column.</summary>
    /// <param name="points">The edge.</param>
    /// <param name="upper">Whether it is the edge nearer the top of the screen, where y is small.</param>
    public static List<ScreenPoint> Edge(List<ScreenPoint> points, bool upper)
    {
        if (points.Count <= Threshold)
        {
            return points;
        }

        List<ScreenPoint> kept = [];
        foreach ((int from, int to) in Columns(points))
        {
            List<ScreenPoint> column = points[from..to];
            double y = upper ? column.Min(p => p.Y) : column.Max(p => p.Y);
            kept.Add(new ScreenPoint(column[0].X, y));
            kept.Add(new ScreenPoint(column[^1].X, y));
        }

        return kept;
    }

    private static IEnumerable<(int From, int To)> Columns(List<ScreenPoint> points)
    {
        int from = 0;
        for (int i = 1; i <= points.Count; i++)
        {
            if (i == points.Count || Math.Floor(points[i].X) != Math.Floor(points[from].X))
            {
                yield return (from, i);
                from = i;
            }
        }
    }
}
