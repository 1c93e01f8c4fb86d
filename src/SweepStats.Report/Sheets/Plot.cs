using System.Globalization;
using System.Text;
using OxyPlot;
using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;
using SweepStats.Report.Text;

namespace SweepStats.Report.Sheets;

/// <summary>
/// Draws a picture as <c>svg</c> within the page. Colours come from the style sheet: it suits dark, light and print.
/// </summary>
internal sealed class Plot
{
    private const double ArrowLength = 11;
    private const double ArrowSpacing = 34;
    private const double RingRadius = 2.6;
    private const double LoneHalfWidth = 1.5;

    private readonly HtmlWriter _html;

    /// <summary>Starts a picture; end it with <see cref="End"/>.</summary>
    /// <param name="html">Where it goes.</param>
    /// <param name="space">Its size and scales.</param>
    /// <param name="shows">What a person who cannot see it should know.</param>
    /// <param name="kind">Class in the style sheet.</param>
    /// <param name="read">Whether the script of the page reads values off it.</param>
    public Plot(HtmlWriter html, PlotSpace space, string shows, string kind = "plot", bool read = false)
    {
        (_html, Space) = (html, space);
        html.Picture(kind, space.Width, space.Height, shows, read ? space.Scales : null);
    }

    /// <summary>Size and scales.</summary>
    public PlotSpace Space { get; }

    /// <summary>Closes the picture: nothing is drawn into it afterwards.</summary>
    public void End() => _html.Close();

    /// <summary>Frame, grid and numbers of both axes.</summary>
    public void Axes(string verticalTitle)
    {
        foreach (double level in Space.Levels)
        {
            Stroke("grid", new(Space.Left, Space.Y(level)), new(Space.Right, Space.Y(level)));
            Text(Printed.Plain(level), Space.Left - 6, Space.Y(level) + 4, "end");
        }

        Text(verticalTitle, 0, Space.Top - 9, "start");
        FrequencyAxis();
    }

    /// <summary>A line, broken where a point is not a number and where the grid has a gap.</summary>
    public void Line(string kind, IEnumerable<DataPoint> points)
    {
        var path = new StringBuilder();
        DataPoint? before = null;
        foreach (DataPoint point in points)
        {
            bool known = double.IsFinite(point.Y);
            if (known)
            {
                // A point that stands alone is a dot: the ends of lines are round.
                path.Append(before is { } last && !Space.Parts(last.X, point.X) ? $"L{Place(point)}" : $"M{Place(point)}h0");
            }

            before = known ? point : null;
        }

        Path(kind, path);
    }

    /// <summary>The room between two edges, one piece for each run of points that are numbers.</summary>
    public void Area(string kind, IReadOnlyList<Slice> slices)
    {
        var path = new StringBuilder();
        for (int from = 0; from < slices.Count; from++)
        {
            int to = from;
            while (to < slices.Count && double.IsFinite(slices[to].Low) && double.IsFinite(slices[to].High)
                && (to == from || !Space.Parts(slices[to - 1].X, slices[to].X)))
            {
                to++;
            }

            if (to > from)
            {
                Piece(path, [.. slices.Skip(from).Take(to - from)]);
                from = to - 1;
            }
        }

        Path(kind, path);
    }

    /// <summary>Lower bounds: open circles with an arrow upwards, as many as there is room for.</summary>
    public void Bounds(IEnumerable<DataPoint> bounds, double spacing = ArrowSpacing)
    {
        DataPoint[] shown = [.. Spaced(bounds.Where(b => double.IsFinite(b.Y)), spacing)];
        foreach (DataPoint bound in shown)
        {
            Ring(Space.X(bound.X), Space.Y(bound.Y), RingRadius);
        }

        Arrows(shown, RingRadius);
    }

    /// <summary>Arrows upwards alone, from an edge that is open.</summary>
    public void Upwards(IEnumerable<DataPoint> edge) => Arrows(Spaced(edge, ArrowSpacing), 0);

    /// <summary>A filled point.</summary>
    public void Dot(double x, double y) => Circle("dot", x, y, 3.4);

    /// <summary>An open point.</summary>
    public void Ring(double x, double y, double radius = 3.4) => Circle("ring", x, y, radius);

    /// <summary>A straight line between two places in the picture.</summary>
    public void Stroke(string kind, ScreenPoint from, ScreenPoint to) =>
        _html.Open("path", new Attr("class", kind),
            new Attr("d", $"M{Number(from.X)} {Number(from.Y)}L{Number(to.X)} {Number(to.Y)}")).Close();

    /// <summary>Text at a place in the picture.</summary>
    /// <param name="text">What it says.</param>
    /// <param name="x">Where it is anchored.</param>
    /// <param name="y">Its base line.</param>
    /// <param name="anchor"><c>start</c>, <c>middle</c> or <c>end</c>.</param>
    /// <param name="kind">Class in the style sheet.</param>
    public void Text(string text, double x, double y, string anchor, string kind = "mark") =>
        _html.Element("text", text, new Attr("class", kind),
            new Attr("x", Number(x)), new Attr("y", Number(y)), new Attr("text-anchor", anchor));

    private void FrequencyAxis()
    {
        Stroke("axis", new(Space.Left, Space.Bottom), new(Space.Right, Space.Bottom));
        double end = double.NegativeInfinity;
        foreach (FrequencyMark mark in Space.Frequencies)
        {
            double x = Space.X(mark.Hertz);
            Stroke("axis", new(x, Space.Bottom), new(x, Space.Bottom + 4));
            if (mark.Anchor == "start" || x - mark.HalfWidth > end)
            {
                Text(mark.Text, x, Space.Bottom + 18, mark.Anchor);
                end = x + (mark.Anchor == "start" ? 2 * mark.HalfWidth : mark.HalfWidth);
            }
        }
    }

    private void Piece(StringBuilder path, Slice[] slices)
    {
        if (slices is [var alone])
        {
            (double x, double high, double low) = (Space.X(alone.X), Space.Y(alone.High), Space.Y(alone.Low));
            path.Append(CultureInfo.InvariantCulture, $"M{Number(x - LoneHalfWidth)} "
                + $"{Number(high)}H{Number(x + LoneHalfWidth)}V{Number(low)}H{Number(x - LoneHalfWidth)}Z");
            return;
        }

        for (int i = 0; i < slices.Length; i++)
        {
            path.Append(i == 0 ? 'M' : 'L').Append(Place(new DataPoint(slices[i].X, slices[i].High)));
        }

        foreach (Slice slice in slices.Reverse())
        {
            path.Append('L').Append(Place(new DataPoint(slice.X, slice.Low)));
        }

        path.Append('Z');
    }

    private IEnumerable<DataPoint> Spaced(IEnumerable<DataPoint> points, double spacing)
    {
        double free = double.NegativeInfinity;
        foreach (DataPoint point in points.Where(p => Space.X(p.X) >= free))
        {
            free = Space.X(point.X) + spacing;
            yield return point;
        }
    }

    private void Arrows(IEnumerable<DataPoint> from, double above)
    {
        var arrows = new StringBuilder();
        foreach (DataPoint point in from)
        {
            Arrow(arrows, Space.X(point.X), Space.Y(point.Y) - above);
        }

        Path("arrow", arrows);
    }

    private static void Arrow(StringBuilder path, double x, double y) => path.Append(CultureInfo.InvariantCulture,
        $"M{Number(x)} {Number(y)}v{Number(-ArrowLength)}m-3 4l3 -4l3 4");

    private void Circle(string kind, double x, double y, double radius) =>
        _html.Open("circle", new Attr("class", kind),
            new Attr("cx", Number(x)), new Attr("cy", Number(y)), new Attr("r", Number(radius))).Close();

    private void Path(string kind, StringBuilder path)
    {
        if (path.Length > 0)
        {
            _html.Open("path", new Attr("class", kind), new Attr("d", path.ToString())).Close();
        }
    }

    private string Place(DataPoint point) => $"{Number(Space.X(point.X))} {Number(Space.Y(point.Y))}";

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
