using SweepStats.Cli.Look;
using SweepStats.Files.Traces;
using SweepStats.Statistics;

namespace SweepStats.Cli.Plot;

/// <summary>A trace as a small picture in text: the envelope of its levels over frequency.</summary>
/// <param name="ascii">Whether the output knows plain characters only.</param>
internal sealed class TracePlot(bool ascii)
{
    private const int Width = 64;

    /// <summary>Whether there is something to draw: rising frequencies, two finite levels at least.</summary>
    public static bool CanShow(Trace trace) => trace.Axis.Grid is not null && trace.Levels.Count(double.IsFinite) > 1;

    /// <summary>The lines of the picture.</summary>
    /// <param name="trace">A trace that can be shown.</param>
    /// <param name="height">Lines of the field, two at least; the frequencies take one more.</param>
    public IEnumerable<string> Of(Trace trace, int height)
    {
        IPlotCanvas canvas = ascii ? new AsciiCanvas(Width, height) : new BrailleCanvas(Width, height);
        (double low, double high) = LevelText.Range(trace)!.Value;
        Draw(Envelope.Of(trace.Axis.Hertz.AsSpan(), trace.Levels.AsSpan(), canvas.Columns), canvas, new(low, high));
        string[] labels = Labels(trace, new(low, high), height);
        int margin = labels.Max(label => label.Length);
        return canvas.Lines().Select((line, i) => $"{labels[i].PadLeft(margin)} |{line}")
            .Append(new string(' ', margin + 2) + Frequencies(trace));
    }

    private static void Draw(Envelope envelope, IPlotCanvas canvas, Interval range)
    {
        for (int column = 0; column < envelope.Columns; column++)
        {
            if (envelope[column] is { } levels)
            {
                canvas.Fill(column, Row(levels.High, range, canvas.Rows), Row(levels.Low, range, canvas.Rows));
            }
        }
    }

    // A flat trace lies in the middle. Halves, because the span of two finite levels need not be finite.
    private static int Row(double level, Interval range, int rows)
    {
        double span = (range.High / 2) - (range.Low / 2);
        double down = span > 0 ? ((range.High / 2) - (level / 2)) / span : 0.5;
        return (int)Math.Round(Math.Clamp(down, 0, 1) * (rows - 1), MidpointRounding.AwayFromZero);
    }

    private static string[] Labels(Trace trace, Interval range, int height)
    {
        string[] labels = [.. Enumerable.Repeat("", height)];
        string unit = trace.Unit is { } stated and not LevelUnit.LinearMagnitude ? " " + stated.Symbol() : "";
        if (range.Low == range.High)
        {
            labels[height / 2] = LevelText.Of(range.High, trace.Unit) + unit;
            return labels;
        }

        (labels[0], labels[^1]) = (LevelText.Of(range.High, trace.Unit) + unit, LevelText.Of(range.Low, trace.Unit) + unit);
        return labels;
    }

    private static string Frequencies(Trace trace)
    {
        string first = ReadFrequency.Text(trace.Axis.Hertz[0]), last = ReadFrequency.Text(trace.Axis.Hertz[^1]);
        string between = new PlotScale(trace.Axis.Hertz[0], trace.Axis.Hertz[^1]).IsLogarithmic ? "(log)" : "";
        int left = Math.Max(1, ((Width - between.Length) / 2) - first.Length);
        int right = Math.Max(1, Width - first.Length - left - between.Length - last.Length);
        return first + new string(' ', left) + between + new string(' ', right) + last;
    }
}
