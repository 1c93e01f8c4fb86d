using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>
/// Rectangles of sweeps × frequency, coloured by value; columns without a value are hatched. Drawn as rectangles: a bitmap would
/// blur in print.
/// </summary>
internal sealed class HeatMap : ChartSeries
{
    // Rows as high as this are set apart by a thin white line.
    private const double GapFrom = 12;

    /// <summary>The columns, rising without gap.</summary>
    public required IReadOnlyList<HeatColumn> Columns { get; init; }

    /// <summary>Values in dB, one row a line of the map from the top, one value a column; null where there is none.</summary>
    public required IReadOnlyList<double?[]> Rows { get; init; }

    /// <summary>Which value has which colour.</summary>
    public required HeatScale Scale { get; init; }

    /// <summary>The whole plot area.</summary>
    public override OxyRect GetClippingRect() => PlotModel.PlotArea;

    protected override void Draw(IRenderContext rc)
    {
        bool gap = PlotModel.PlotArea.Height / Rows.Count >= GapFrom;
        for (int row = 0; row < Rows.Count; row++)
        {
            double top = Math.Round(YAxis.Transform(row - 0.5));
            double bottom = Math.Round(YAxis.Transform(row + 0.5));
            Row(rc, Rows[row], top, gap ? bottom - 1 : bottom);
        }

        foreach ((int from, int to) in Runs(Columns.Count, i => Columns[i].Points.Count == 0))
        {
            Hatch.Draw(rc, new OxyRect(new ScreenPoint(Left(from), Top), new ScreenPoint(Left(to), Bottom)));
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
    }

    /// <summary>Neighbours of one colour are one rectangle, white ones none: the file stays small.</summary>
    private void Row(IRenderContext rc, double?[] values, double top, double bottom)
    {
        int[] shades = [.. values.Select(v => v is { } value ? Scale.Shade(value) : 0)];
        for (int from = 0, to; from < shades.Length; from = to)
        {
            to = from + 1;
            while (to < shades.Length && shades[to] == shades[from])
            {
                to++;
            }

            if (shades[from] != 0)
            {
                rc.DrawRectangle(new OxyRect(new ScreenPoint(Left(from), top), new ScreenPoint(Left(to), bottom)),
                    HeatScale.Colour(shades[from]), OxyColors.Undefined, 0, EdgeRenderingMode.PreferSharpness);
            }
        }
    }

    private double Left(int column) =>
        Math.Round(XAxis.Transform(column < Columns.Count ? Columns[column].FromHz : Columns[^1].ToHz));
}
