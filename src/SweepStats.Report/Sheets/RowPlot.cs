using System.Globalization;
using SweepStats.Bands;
using SweepStats.Report.Pages;
using SweepStats.Report.Text;

namespace SweepStats.Report.Sheets;

/// <summary>Figures as one row each: name, value, interval; an arrow where the upper end is open.</summary>
internal sealed class RowPlot
{
    private const double LeastGap = 44;

    private readonly HtmlWriter _html;
    private readonly RowSpace _space;

    /// <summary>Starts a picture; end it with <see cref="End"/>. The words are for a person who cannot see it.</summary>
    public RowPlot(HtmlWriter html, RowSpace space, string shows)
    {
        (_html, _space) = (html, space);
        html.Picture("plot", space.Width, space.Height, shows);
    }

    /// <summary>Lines and numbers at steps in dB, thinned out where they would touch, and what is measured above.</summary>
    public void Scale(double step, string title)
    {
        Text(title, 0, RowSpace.Top - 9, "start");
        double steps = Math.Round((_space.High - _space.Low) / step);
        double every = Math.Ceiling(LeastGap * steps / (_space.Right - _space.Left));
        for (double i = 0; i <= steps; i += every)
        {
            double level = Math.Round(_space.Low + (i * step), 6);
            Stroke("grid", X(level), RowSpace.Top, X(level), _space.Bottom);
            Text(Printed.Plain(level), X(level), _space.Bottom + 18, "middle");
        }
    }

    /// <summary>A row at a height: the mark stands on the value, or where there is none on the lower limit.</summary>
    public void Row(string name, double y, BandFigure figure, bool filled)
    {
        Text(name, _space.Left - 10, y + 4, "end");
        double low = figure.Low ?? figure.Value!.Value;
        double high = figure.High ?? figure.Value ?? low;
        Stroke("bar", X(low), y, X(high), y);
        if (figure is { High: null, Low: not null })
        {
            double end = Math.Min(X(high) + 14, _space.Right);
            _html.Open("path", new Attr("class", "arrow"),
                new Attr("d", $"M{Number(X(high))} {Number(y)}H{Number(end)}m-4 -3l4 3l-4 3")).Close();
        }

        string kind = filled ? "dot" : "ring";
        _html.Open("circle", new Attr("class", kind),
            new Attr("cx", Number(X(figure.Value ?? low))), new Attr("cy", Number(y)), new Attr("r", "3.8")).Close();
    }

    /// <summary>Closes the picture: nothing is drawn into it afterwards.</summary>
    public void End() => _html.Close();

    private double X(double level)
    {
        double share = (Math.Clamp(level, _space.Low, _space.High) - _space.Low) / (_space.High - _space.Low);
        return _space.Left + ((_space.Right - _space.Left) * share);
    }

    private void Stroke(string kind, double x1, double y1, double x2, double y2) =>
        _html.Open("path", new Attr("class", kind),
            new Attr("d", $"M{Number(x1)} {Number(y1)}L{Number(x2)} {Number(y2)}")).Close();

    private void Text(string text, double x, double y, string anchor) =>
        _html.Element("text", text, new Attr("class", "mark"),
            new Attr("x", Number(x)), new Attr("y", Number(y)), new Attr("text-anchor", anchor));

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
