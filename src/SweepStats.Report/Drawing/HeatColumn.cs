using SweepStats.Repeats;
using SweepStats.Sweeps;

namespace SweepStats.Report.Drawing;

/// <summary>A column of a heat map: a stretch of the frequency axis and the compared points in it.</summary>
/// <param name="FromHz">Left edge.</param>
/// <param name="ToHz">Right edge.</param>
/// <param name="Points">Places in <see cref="RepeatGroup.Points"/>; empty where no point of the stretch was compared.</param>
internal sealed record HeatColumn(double FromHz, double ToHz, List<int> Points)
{
    /// <summary>More columns than this are too narrow to see.</summary>
    public const int Most = 150;

    // The last gives two columns a division at most.
    private static readonly int[] Divisions = [140, 110, Most / 2];

    /// <summary>
    /// Columns that cover the whole axis without a gap, each at least half a division wide: points that fall close together share
    /// one, a point far from the others has one of its own. Where some points of a division were compared and others not, each
    /// kind has half of its width: neither hides the other.
    /// </summary>
    public static List<HeatColumn> Of(FrequencyGrid grid, RepeatGroup group)
    {
        var place = group.Points.Select((point, i) => (point, i)).ToDictionary(p => p.point, p => p.i);
        return Divisions.Select(divisions => Of(grid, place, divisions)).First(columns => columns.Count <= Most);
    }

    /// <summary>
    /// What is left of the sweeps, the value farthest from zero, so that no spike is lost; null where nothing was compared.
    /// </summary>
    public double? Farthest(IEnumerable<RepeatedSweep> sweeps) =>
        Points.Count == 0 ? null : sweeps.SelectMany(s => Points.Select(p => s.RestDb[p])).MaxBy(Math.Abs);

    private static List<HeatColumn> Of(FrequencyGrid grid, Dictionary<int, int> place, int divisions)
    {
        bool log = FrequencyScale.IsLogarithmic(grid);
        List<HeatColumn> columns = [];
        for (int from = 0, to; from < grid.Count; from = to)
        {
            to = from + 1;
            while (to < grid.Count && Division(grid, to, divisions) == Division(grid, from, divisions))
            {
                to++;
            }

            double left = columns.Count == 0 ? grid[0].Value : columns[^1].ToHz;
            double right = to == grid.Count ? grid[^1].Value : Between(grid[to - 1].Value, grid[to].Value, log);
            List<int> compared = [.. Enumerable.Range(from, to - from).Where(place.ContainsKey).Select(f => place[f])];
            double end = compared.Count > 0 && compared.Count < to - from ? Between(left, right, log) : right;
            columns.Add(new HeatColumn(left, end, compared));
            if (end < right)
            {
                columns.Add(new HeatColumn(end, right, []));
            }
        }

        return columns;
    }

    /// <summary>Which of so many equal parts of the axis a point lies in.</summary>
    private static int Division(FrequencyGrid grid, int point, int divisions)
    {
        (double start, double stop, double at) = (grid[0].Value, grid[^1].Value, grid[point].Value);
        double share = FrequencyScale.IsLogarithmic(grid) ? Math.Log(at / start) / Math.Log(stop / start)
            : (at - start) / (stop - start);
        return Math.Min(divisions - 1, (int)(share * divisions));
    }

    private static double Between(double low, double high, bool log) => log ? Math.Sqrt(low * high) : (low + high) / 2;
}
