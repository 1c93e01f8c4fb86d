using OxyPlot.Axes;
using SweepStats.Report.Text;

namespace SweepStats.Report.Drawing;

/// <summary>The axis below names that stand side by side, one a place: those that fit, the ones that matter first.</summary>
internal static class ThinnedLabels
{
    private const double PlotWidth = 790;
    private const double LabelSize = 13;
    private const double Apart = 10;

    // Room for half a label beside the plot.
    private const double Beside = 24;

    // Names are cut until the first and the last stay inside the picture; shorter than the last they say nothing.
    private static readonly int[] Lengths = [18, 12, 8];

    /// <param name="title">What stands side by side.</param>
    /// <param name="names">The names from left to right, at places from 0.</param>
    /// <param name="matters">Which of them must not be left out where there is room.</param>
    public static LabelledAxis Axis(string title, IReadOnlyList<string> names, Func<int, bool> matters)
    {
        double scale = PlotWidth / names.Count;
        CutLabel[] labels =
        [
            .. Lengths.Select(longest => Measured(names, longest))
                .FirstOrDefault(l => Inside(l, scale), Measured(names, Lengths[^1])),
        ];
        return new LabelledAxis(AxisPosition.Bottom, Fitting(labels, scale, matters))
        {
            Minimum = -0.5,
            Maximum = names.Count - 0.5,
            Title = title,
        };
    }

    private static CutLabel[] Measured(IReadOnlyList<string> names, int longest)
    {
        var measurer = new TextMeasurer();
        return [.. names.Select(n => Frame.Literal(PlainText.Short(n, longest)))
            .Select(text => new CutLabel(text, measurer.MeasureText(text, null, LabelSize, 400).Width / 2))];
    }

    private static bool Inside(CutLabel[] labels, double scale) =>
        Math.Max(labels[0].Half, labels[^1].Half) <= (scale / 2) + Beside;

    private static List<PlaceLabel> Fitting(CutLabel[] labels, double scale, Func<int, bool> matters)
    {
        List<int> kept = [];
        foreach (int i in Enumerable.Range(0, labels.Length).OrderBy(i => matters(i) ? 0 : 1))
        {
            bool inside = labels[i].Half <= ((Math.Min(i, labels.Length - 1 - i) + 0.5) * scale) + Beside;
            if (inside && kept.TrueForAll(k => Math.Abs(i - k) * scale >= labels[i].Half + labels[k].Half + Apart))
            {
                kept.Add(i);
            }
        }

        return [.. kept.Order().Select(i => new PlaceLabel(i, labels[i].Text))];
    }

    /// <summary>A name as it is cut, and half its width.</summary>
    private readonly record struct CutLabel(string Text, double Half);
}
