using OxyPlot;
using SweepStats.Lots;
using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Lots;

/// <summary>
/// How far each lot lies above or below the mean of all lots at each frequency, and where they differ by more than chance.
/// </summary>
/// <remarks>
/// Where only bounds are known they stand in for what is hidden, in that mean too. So it is a known level, a line against it is
/// exact, and an arrow that stands on a bound says rightly that the lot lies there or higher.
/// </remarks>
internal static class LotFrequencyChart
{
    private const double ArrowSpacing = 42;
    private const double LeastSpanDb = 1;

    // Thin lines have no markers along them, only lone points do.
    private const double Never = double.MaxValue;

    /// <summary>The chart; null for a single lot, and where nothing is known of any.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        LotComparison lots = result.Lots;
        List<DataPoint>[] apart =
            [.. lots.Lots.Select(
                (_, l) => LotTraces.Points(lots.Frequencies, f => f.Lots[l].MeanDb - f.Lots.Average(o => o.MeanDb)))];
        if (lots.Lots.Length < 2 || !apart.Any(LotTraces.Any))
        {
            return null;
        }

        int[] shown = LotTraces.Foremost(lots.Lots.Length,
            l => apart[l].Where(p => double.IsFinite(p.Y)).Select(p => Math.Abs(p.Y)).DefaultIfEmpty(0).Average());
        bool[] differ = [.. lots.Frequencies.Select(lots.DifferAt)];
        bool bounds = lots.Frequencies.Any(f => f.Lots.Any(l => l.Bound));
        PlotModel model = Frame.Model(
                LotChartWords.LotFrequencyTitle, LotChartWords.LotFrequencySubtitle(shown.Length, lots.Lots.Length, bounds),
            FrequencyScale.Axis(result.Campaign.Grid), DecibelScale.Axis("Difference from the mean of all lots (dB)",
                apart.SelectMany(l => l).Select(p => p.Y), bounds ? 0.16 : 0.08, LeastSpanDb))
            .With([
                .. Others(lots, apart, shown),
                new Trace { Colour = Ink.Grey, Points = [.. lots.Frequencies.Select(f => new DataPoint(f.At.Value, 0))],
                    Thickness = 1 },
                .. shown.SelectMany((l, i) => Lines(lots, l, apart[l], new(i, shown.Length))),
                differ.Contains(true)
                    ? new EdgeStretches { Colour = Ink.Red, Places = [.. lots.Frequencies.Select(f => f.At.Value)],
                        Marked = differ, Title = LotChartWords.LotsDifferLegend(lots.Question) } : null,
            ]);
        return new Chart(name, ChartKind.LotsOverFrequency, LotChartWords.LotFrequencyTitle,
            LotChartWords.LotFrequencyDescription(lots, differ.Count(d => d)), model);
    }

    // Faint and without a name, so that a reader sees what is usual.
    private static IEnumerable<Trace> Others(LotComparison lots, List<DataPoint>[] apart, int[] shown) =>
        Enumerable.Range(0, lots.Lots.Length).Except(shown).Select((l, i) => new Trace
        {
            Colour = Ink.Veil(Ink.Grey, 80),
            Points = Kept(lots, apart[l], at => !at.Lots[l].Bound),
            Thickness = 0.9,
            LoneDots = true,
            Title = i == 0 ? LotChartWords.OtherLotsLegend : null,
        });

    private static IEnumerable<ChartSeries> Lines(
        LotComparison lots, int lot, List<DataPoint> apart, OneOfSeveral among)
    {
        string title = Frame.Names(lots.Lots)[lot];
        List<DataPoint> clear = Kept(lots, apart, at => !at.Lots.Any(l => l.Bound));
        List<DataPoint> amidBounds = Kept(lots, apart, at => at.Lots.Any(l => l.Bound) && !at.Lots[lot].Bound);
        List<DataPoint> bounds = [.. Kept(lots, apart, at => at.Lots[lot].Bound).Where(p => double.IsFinite(p.Y))];
        Ink ink = Ink.Lines[among.Place];
        if (LotTraces.Any(clear))
        {
            yield return LotTraces.Line(clear, among, title, bounds.Count > 0);
        }

        if (LotTraces.Any(amidBounds))
        {
            yield return new Trace
            {
                Colour = Ink.Veil(ink.Colour, 170),
                Points = amidBounds,
                Thickness = 0.9,
                LoneDots = true,
                Hollow = true,
                Marker = ink.Marker,
                MarkerStart = Never,
                Title = LotTraces.Any(clear) ? null : title,
                ArrowStyle = bounds.Count > 0 ? among.Place : null,
            };
        }

        if (bounds.Count > 0)
        {
            yield return new OpenBounds
            {
                Colour = ink.Colour,
                Bounds = bounds,
                Length = 16,
                Style = among.Place,
                Spacing = ArrowSpacing,
                Shift = LotTraces.Shift(among, ArrowSpacing),
                Title = LotTraces.Any(clear) || LotTraces.Any(amidBounds) ? null : LotChartWords.BoundOnlyLegend(title),
            };
        }
    }

    private static List<DataPoint> Kept(LotComparison lots, List<DataPoint> apart, Func<LotFrequency, bool> keep) =>
        [.. apart.Select((p, f) => keep(lots.Frequencies[f]) ? p : new DataPoint(p.X, double.NaN))];
}
