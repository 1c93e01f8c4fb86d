using System.Collections.Immutable;
using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Report.Drawing;

namespace SweepStats.Studies;

/// <summary>Coverage over the signal-to-noise ratio: lowest and highest of all cells, ours and the plain interval's.</summary>
internal static class CoverageChart
{
    private const double Middle = 2.5;

    public static string Of(ImmutableArray<Pool> pools)
    {
        var known = pools.Where(p => p.Cell.Drawn == p.Cell.Stated).GroupBy(p => p.SnrDb).OrderBy(g => g.Key).ToList();
        var snr = new LinearAxis
        {
            Position = AxisPosition.Bottom,
            Title = "Signal over noise (dB), in steps of 5 dB",
            Minimum = -20,
            Maximum = 30,
            MajorStep = 5,
            MinorTickSize = 0,
        };
        var share = new LinearAxis
        {
            Position = AxisPosition.Left,
            Title = "Intervals that hold the truth (%)",
            Minimum = 0,
            Maximum = 102,
            MajorStep = 10,
            MinorTickSize = 0,
        };
        Frame.Dress(snr);
        Frame.Dress(share);
        PlotModel model = Frame.Model(
            "How often the interval holds the true shielding",
            "lowest and highest of all cells with the averaging stated; 95 % is promised",
            snr, share).With(
            Line("95 %", known.Select(g => (g.Key, 95.0)), [2, 3], Ink.Grey),
            Line("SweepStats, highest", known.Select(g => (g.Key, 100 * g.Max(p => p.Coverage))), null, Ink.Black),
            Line("SweepStats, lowest", known.Select(g => (g.Key, 100 * g.Min(p => p.Coverage))), [9, 4], Ink.Black),
            Line("plain t, highest", known.Select(g => (g.Key, 100 * g.Max(p => p.PlainCoverage))), null, Ink.Red),
            Line("plain t, lowest", known.Select(g => (g.Key, 100 * g.Min(p => p.PlainCoverage))), [9, 4], Ink.Red));
        var chart = new Chart(
            "coverage", ChartKind.Overview, "How often the interval holds the true shielding",
            "Share of intervals that hold the truth over the signal-to-noise ratio, for SweepStats and for a plain t interval "
                + "on raw readings.", model);
        return System.Text.Encoding.UTF8.GetString(SvgPicture.Of(chart).File);
    }

    private static Trace Line(string name, IEnumerable<(int Snr, double Share)> points, double[]? dash, OxyColor colour) => new()
    {
        Title = name,
        Colour = colour,
        Dash = dash,
        Points = [.. points.Select(p => new DataPoint(p.Snr + Middle, p.Share))],
    };
}
