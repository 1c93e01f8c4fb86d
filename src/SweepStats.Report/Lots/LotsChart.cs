using System.Collections.Immutable;
using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Lots;
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
    private const double LeastRoomDb = 5;

    /// <summary>Distance in rows between the mean, the specimens below it and the promise below these.</summary>
    private const double Apart = 0.25;

    /// <summary>The chart; null for a single specimen, and where no part of the band is clear.</summary>
    public static Chart? Of(LotsShown band, string name)
    {
        ImmutableArray<LotSummary> lots = [.. band.Lots.Take(Most)];
        Dictionary<string, int> rows = lots.Select((l, i) => (l.Lot, i)).ToDictionary(l => l.Lot, l => l.i);
        List<DataPoint> pieces = [.. band.Specimens.Where(p => rows.ContainsKey(p.Name.Lot) && double.IsFinite(p.MeanDb))
            .Select(p => new DataPoint(p.MeanDb, rows[p.Name.Lot]))];
        if (band.Specimens.Length < 2 || pieces.Count == 0)
        {
            return null;
        }

        List<FigureRow> means =
        [
            .. Placed(lots, l => l.MeanIntervalDb ?? l.BetweenLotsIntervalDb)
                .Select(m => new FigureRow(m.Row - Apart, m.Lot.MeanDb, m.Figure.Low, m.Figure.High)),
        ];
        List<PromiseRow> promises =
        [
            .. Placed(lots, l => l.ToleranceLimitDb ?? l.BetweenLotsLimitDb).Select(p => new PromiseRow(p.Row + Apart, p.Figure)),
        ];
        List<DataPoint> plain =
            [.. lots.Select((l, i) => new DataPoint(l.PlainMeanDb, i - Apart)).Where(p => double.IsFinite(p.X))];
        LinearAxis values = Values([.. pieces.Select(p => p.X), .. plain.Select(p => p.X)],
            [.. means.SelectMany(m => new[] { m.Low, m.High!.Value }), .. promises.Select(p => p.Limit)]);
        bool cut = means.Exists(m => m.Low < values.Minimum || m.High > values.Maximum);
        bool alone = lots.Any(l => l.SharedUnknown);
        PlotModel model = Frame.Model(LotChartWords.LotsChartTitle, LotChartWords.LotsChartSubtitle(band, lots.Length), values,
            Rows(lots)).With([
            new RowStripes { Colour = Ink.Veil(Ink.Faint, 110), Groups = [.. lots.Select((_, i) => ((double)i, (double)i))] },
            new PointMarks { Colour = Ink.Blue, Points = pieces, Marker = MarkerType.Diamond, Size = 3.4,
                Title = LotChartWords.SpecimenLegend },
            means.Count > 0 ? new BandRows { Colour = Ink.Black, Figures = means, Labelled = false,
                Title = LotChartWords.LotMeanLegend(band.Question, cut, alone) } : null,
            .. Promises(promises, values.Minimum, LotChartWords.LotPromiseLegend(band.Question, alone)),
            plain.Count > 0 ? new PointMarks { Colour = Ink.Red, Points = plain, Marker = MarkerType.Square, Size = 6,
                Hollow = true, Title = LotChartWords.PlainMeanLegend } : null,
        ]);
        return new Chart(name, ChartKind.Lots, LotChartWords.LotsChartTitle, LotChartWords.LotsChartDescription(lots), model,
            Surroundings + (RowHeight * Math.Max(2, lots.Length)));
    }

    private static IEnumerable<(double Row, LotSummary Lot, T Figure)> Placed<T>(ImmutableArray<LotSummary> lots,
        Func<LotSummary, T?> figure)
        where T : struct =>
        lots.Select((lot, i) => ((double)i, lot, figure(lot))).Where(l => l.Item3 is not null)
            .Select(l => (l.Item1, l.lot, l.Item3!.Value));

    private static IEnumerable<ChartSeries> Promises(IReadOnlyList<PromiseRow> promises, double least, string legend)
    {
        OxyColor colour = Ink.Lines[1].Colour;
        ILookup<bool, PromiseRow> seen = promises.ToLookup(p => p.Limit >= least);
        if (seen[true].Any())
        {
            FigureRow[] limits = [.. seen[true].Select(p => new FigureRow(p.Row, null, p.Limit, null))];
            yield return new BandRows { Colour = colour, Figures = limits, Title = legend };
        }

        if (seen[false].Any())
        {
            yield return new RowText
            {
                Colour = colour,
                Rows = [.. seen[false].Select(p => (p.Row, LotChartWords.PromiseOutside(p.Limit)))],
            };
        }
    }

    /// <summary>
    /// An axis for the points; limits far outside, as two specimens that differ give them, would squeeze these and are cut.
    /// </summary>
    private static LinearAxis Values(double[] points, IEnumerable<double> limits)
    {
        double room = Math.Max(LeastRoomDb, 2 * (points.Max() - points.Min()));
        LinearAxis axis = DecibelScale.Axis("Mean shielding over the band (dB)",
            points.Concat(limits.Select(l => Math.Clamp(l, points.Min() - room, points.Max() + room))), 0.1);
        axis.Position = AxisPosition.Bottom;
        return axis;
    }

    private static LabelledAxis Rows(ImmutableArray<LotSummary> lots) =>
        new(AxisPosition.Left, Frame.Names([.. lots.Select(l => l.Lot)]).Select((name, i) => new PlaceLabel(i, name)))
        {
            StartPosition = 1,
            EndPosition = 0,
            Minimum = -0.5,
            Maximum = lots.Length - 0.5,
        };

    /// <summary>A promise in dB and its row from the top.</summary>
    private readonly record struct PromiseRow(double Row, double Limit);
}
