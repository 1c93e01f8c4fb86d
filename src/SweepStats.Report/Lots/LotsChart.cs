using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Lots;

/// <summary>
/// Lots at a glance, one a row: each specimen, the mean of the lot with its interval, what the lot promises, and what plain
/// averaging would have said.
/// </summary>
internal static class LotsChart
{
    /// <summary>More rows than this are no glance.</summary>
    public const int Most = 30;

    private const int RowHeight = 50;
    private const int Surroundings = 165;

    /// <summary>The chart; null for a single specimen, and where no part of the band is clear.</summary>
    public static Chart? Of(LotsShown band, string name)
    {
        var rows = new LotRows(band, Most);
        if (band.Specimens.Length < 2 || rows.Specimens.Length == 0)
        {
            return null;
        }

        int count = rows.Lots.Length;
        LinearAxis values = rows.Values();
        PlotModel model = Frame.Model(LotChartWords.LotsChartTitle, LotChartWords.LotsChartSubtitle(band, count), values,
            rows.Names()).With(Series(band, rows, values));
        return new Chart(name, ChartKind.Lots, LotChartWords.LotsChartTitle, LotChartWords.LotsChartDescription(rows.Lots), model,
            Surroundings + (RowHeight * Math.Max(2, count)));
    }

    private static IEnumerable<ChartSeries> Series(LotsShown band, LotRows rows, LinearAxis values)
    {
        bool alone = rows.Lots.Any(l => l.SharedUnknown);
        return
        [
            new RowStripes { Colour = Ink.Veil(Ink.Faint, 110),
                Groups = [.. Enumerable.Range(0, rows.Lots.Length).Select(i => ((double)i, (double)i))] },
            new PointMarks { Colour = Ink.Blue, Points = rows.Specimens, Marker = MarkerType.Diamond, Size = 3.4,
                Title = LotChartWords.SpecimenLegend },
            new BandRows { Colour = Ink.Black, Figures = rows.Means, Labelled = false,
                Title = LotChartWords.LotMeanLegend(band.Question, IsCut(rows, values), alone) },
            .. Promises(rows, values.Minimum, LotChartWords.LotPromiseLegend(band.Question, alone)),
            new PointMarks { Colour = Ink.Red, Points = rows.Plain, Marker = MarkerType.Square, Size = 6, Hollow = true,
                Title = LotChartWords.PlainMeanLegend },
        ];
    }

    private static bool IsCut(LotRows rows, LinearAxis values) =>
        Array.Exists(rows.Means, m => m.Low < values.Minimum || m.High > values.Maximum);

    private static IEnumerable<ChartSeries> Promises(LotRows rows, double least, string legend)
    {
        OxyColor colour = Ink.Lines[1].Colour;
        yield return new BandRows { Colour = colour, Figures = [.. rows.Promises.Where(p => p.Low >= least)], Title = legend };
        FigureRow[] outside = [.. rows.Promises.Where(p => !(p.Low >= least))];
        if (outside.Length > 0)
        {
            yield return new RowText
            {
                Colour = colour,
                Rows = [.. outside.Select(p => (p.Row, LotChartWords.PromiseOutside(p.Low)))],
            };
        }
    }
}
