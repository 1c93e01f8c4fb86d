using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Checks;
using SweepStats.Repeats;
using SweepStats.Report.Drawing;
using SweepStats.Sweeps;

namespace SweepStats.Report.Findings;

/// <summary>
/// What is left of each sweep of a group without its offset, over frequency: where it differs from those that repeat it.
/// </summary>
internal static class ResidualChart
{
    private const int Surroundings = 184;
    private const double TallestRow = 36;
    private const double ShortestRow = 8;
    private const double AllRows = 360;
    private const double LabelledHeight = 17;
    private const int MostRows = 60;

    /// <summary>The chart of a group; sweeps that findings name keep their labels where room is scarce.</summary>
    public static Chart Of(FrequencyGrid grid, RepeatGroup group, ImmutableArray<Finding> findings, string name)
    {
        HashSet<string> odd = [.. findings.Select(f => f.Sweep).OfType<string>()];
        List<RepeatedSweep[]> rows = Rows(group);
        double height = Math.Clamp(AllRows / rows.Count, ShortestRow, TallestRow);
        Axis frequencies = FrequencyScale.Axis(grid);
        frequencies.MajorGridlineStyle = LineStyle.None;
        string title = FindingChartWords.ResidualTitle(group);
        HeatMap map = Map(rows, HeatColumn.Of(grid, group));
        PlotModel model =
            Frame.Model(title, FindingChartWords.ResidualSubtitle(grid, group), frequencies, RowAxis(rows, height, odd))
            .With(map);
        model.Padding = new OxyThickness(model.Padding.Left, model.Padding.Top, model.Padding.Right, HeatKey.Room);
        model.Annotations.Add(Key(map, grid, group, rows[0].Length));
        return new Chart(name, ChartKind.Residuals, title, FindingChartWords.ResidualDescription(grid, group), model,
            Surroundings + (int)(height * rows.Count))
        { Shows = [.. findings.Select(f => f.Code).Distinct()] };
    }

    private static HeatKey Key(HeatMap map, FrequencyGrid grid, RepeatGroup group, int sweeps) => new()
    {
        Scale = map.Scale,
        Hatched = map.Columns.Any(c => c.Points.Count == 0) ? FindingChartWords.NotCompared(group.Role) : null,
        Shared = FindingChartWords.CellsShared(map.Columns.Count < grid.Count, sweeps),
    };

    private static HeatMap Map(List<RepeatedSweep[]> rows, List<HeatColumn> columns)
    {
        List<double?[]> values = [.. rows.Select(row => columns.Select(c => c.Farthest(row)).ToArray())];
        var scale = new HeatScale(values.SelectMany(v => v).OfType<double>());
        return new HeatMap { Colour = Ink.Grey, Columns = columns, Rows = values, Scale = scale };
    }

    /// <summary>
    /// The sweeps from top to bottom in the order they were taken; where they are very many, neighbours share a row.
    /// </summary>
    private static List<RepeatedSweep[]> Rows(RepeatGroup group)
    {
        IEnumerable<RepeatedSweep> sweeps = IsTimed(group) ? group.Sweeps.OrderBy(s => s.Sweep.TakenAt) : group.Sweeps;
        return [.. sweeps.Chunk((group.Sweeps.Length + MostRows - 1) / MostRows)];
    }

    private static bool IsTimed(RepeatGroup group) => group.Sweeps.All(s => s.Sweep.TakenAt is not null);

    private static LabelledAxis RowAxis(List<RepeatedSweep[]> rows, double height, IReadOnlySet<string> odd)
    {
        int every = (int)Math.Ceiling(LabelledHeight / height);
        IEnumerable<PlaceLabel> labels =
            Labelled(rows, every, odd).Select(i => new PlaceLabel(i, FindingChartWords.RowLabel(rows[i], odd)));
        return new LabelledAxis(AxisPosition.Left, labels)
        {
            Minimum = -0.5,
            Maximum = rows.Count - 0.5,
            StartPosition = 1,
            EndPosition = 0,
        };
    }

    /// <summary>Rows whose labels have room: the odd ones, then others so many rows apart.</summary>
    private static List<int> Labelled(List<RepeatedSweep[]> rows, int apart, IReadOnlySet<string> odd)
    {
        List<int> chosen = [];
        foreach (int row in Enumerable.Range(0, rows.Count).OrderBy(i => rows[i].Any(s => odd.Contains(s.Sweep.Name)) ? 0 : 1))
        {
            if (chosen.TrueForAll(c => Math.Abs(c - row) >= apart))
            {
                chosen.Add(row);
            }
        }

        return chosen;
    }
}
