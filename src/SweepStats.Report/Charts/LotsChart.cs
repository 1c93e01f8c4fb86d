using System.Collections.Immutable;
using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Lots;

namespace SweepStats.Report.Charts;

/// <summary>Lots at a glance, one a row: each piece, the mean of the lot with its interval, what the lot promises, and what plain averaging would have said.</summary>
internal static class LotsChart
{
    /// <summary>More rows than this are no glance.</summary>
    public const int Most = 30;

    private const int RowHeight = 50;
    private const int Surroundings = 165;

    /// <summary>Distance in rows between the mean, the pieces below it and the promise below these.</summary>
    private const double Apart = 0.25;

    /// <summary>The chart; null for a single piece, and where no part of the band is clear.</summary>
    public static Chart? Of(AnalysisResult result, string name)
    {
        LotBand band = result.Lots.Whole;
        ImmutableArray<LotSummary> lots = [.. band.Lots.Take(Most)];
        Dictionary<string, int> rows = lots.Select((l, i) => (l.Lot, i)).ToDictionary(l => l.Lot, l => l.i);
        List<DataPoint> pieces = [.. band.Pieces.Where(p => rows.ContainsKey(p.Name.Lot) && double.IsFinite(p.MeanDb)).Select(p => new DataPoint(p.MeanDb, rows[p.Name.Lot]))];
        if (band.Pieces.Length < 2 || pieces.Count == 0)
        {
            return null;
        }

        List<(double Row, double? Value, double Low, double? High)> means = [], promises = [];
        for (int i = 0; i < lots.Length; i++)
        {
            if (lots[i].MeanIntervalDb is { } interval)
            {
                means.Add((i - Apart, lots[i].MeanDb, interval.Low, interval.High));
            }

            if (lots[i].ToleranceLimitDb is { } limit)
            {
                promises.Add((i + Apart, null, limit, null));
            }
        }

        List<DataPoint> plain = [.. lots.Select((l, i) => new DataPoint(l.PlainMeanDb, i - Apart)).Where(p => double.IsFinite(p.X))];
        PlotModel model = Frame.Model(Wording.LotsChartTitle, Wording.LotsChartSubtitle(band, lots.Length), Values([.. means, .. promises], [.. pieces, .. plain]), Rows(lots)).With(
            new RowStripes { Colour = Ink.Veil(Ink.Faint, 110), Groups = [.. lots.Select((_, i) => ((double)i, (double)i))] },
            new PointMarks { Colour = Ink.Blue, Points = pieces, Marker = MarkerType.Diamond, Size = 3.4, Title = Wording.PieceLegend },
            means.Count > 0 ? new BandRows { Colour = Ink.Black, Figures = means, Labelled = false, Title = Wording.LotMeanLegend(result.Lots.Question) } : null,
            promises.Count > 0 ? new BandRows { Colour = Ink.Lines[1].Colour, Figures = promises, Title = Wording.LotPromiseLegend(result.Lots.Question) } : null,
            plain.Count > 0 ? new PointMarks { Colour = Ink.Red, Points = plain, Marker = MarkerType.Square, Size = 6, Hollow = true, Title = Wording.PlainMeanLegend } : null);
        return new Chart(name, ChartKind.Lots, Wording.LotsChartTitle, Wording.LotsChartDescription(lots), model, Surroundings + (RowHeight * Math.Max(2, lots.Length)));
    }

    private static LinearAxis Values(IEnumerable<(double Row, double? Value, double Low, double? High)> figures, IEnumerable<DataPoint> points)
    {
        LinearAxis axis = DecibelScale.Axis("Mean shielding over the band (dB)", figures.SelectMany(f => new[] { f.Low, f.High ?? f.Low }).Concat(points.Select(p => p.X)), 0.1);
        axis.Position = AxisPosition.Bottom;
        return axis;
    }

    private static LabelledAxis Rows(ImmutableArray<LotSummary> lots) =>
        new(AxisPosition.Left, lots.Select((l, i) => ((double)i, Frame.Name(l.Lot)))) { StartPosition = 1, EndPosition = 0, Minimum = -0.5, Maximum = lots.Length - 0.5 };
}
