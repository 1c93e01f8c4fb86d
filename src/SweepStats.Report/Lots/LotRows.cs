using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Lots;
using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Lots;

/// <summary>
/// Lots one a row from the top: the mean above, the specimens on the row, and the promise below them.
/// </summary>
internal sealed class LotRows
{
    private const double LeastRoomDb = 5;

    /// <summary>Distance in rows between the mean, the specimens below it and the promise below these.</summary>
    private const double Apart = 0.25;

    /// <param name="band">The lots and their specimens.</param>
    /// <param name="most">Most rows.</param>
    public LotRows(LotsShown band, int most)
    {
        Lots = [.. band.Lots.Take(most)];
        Dictionary<string, int> rows = Lots.Select((l, i) => (l.Lot, i)).ToDictionary(l => l.Lot, l => l.i);
        Specimens = [.. band.Specimens.Where(p => rows.ContainsKey(p.Name.Lot) && double.IsFinite(p.MeanDb))
            .Select(p => new DataPoint(p.MeanDb, rows[p.Name.Lot]))];
        Means = [.. Lots.SelectMany((l, i) => Mean(l, i - Apart))];
        Promises = [.. Lots.SelectMany((l, i) => Promise(l, i + Apart))];
        Plain = [.. Lots.Select((l, i) => new DataPoint(l.PlainMeanDb, i - Apart)).Where(p => double.IsFinite(p.X))];
    }

    /// <summary>The lots.</summary>
    public ImmutableArray<LotSummary> Lots { get; }

    /// <summary>Each specimen's mean in its lot's row.</summary>
    public DataPoint[] Specimens { get; }

    /// <summary>Means of the lots with their intervals.</summary>
    public FigureRow[] Means { get; }

    /// <summary>What the lots promise, as bounds.</summary>
    public FigureRow[] Promises { get; }

    /// <summary>What plain averaging says.</summary>
    public DataPoint[] Plain { get; }

    /// <summary>
    /// An axis for the points; limits far outside, as two specimens that differ give them, would squeeze these and are cut.
    /// </summary>
    public LinearAxis Values()
    {
        double[] points = [.. Specimens.Select(p => p.X), .. Plain.Select(p => p.X)];
        double[] limits = [.. Means.SelectMany(m => new[] { m.Low, m.High!.Value }), .. Promises.Select(p => p.Low)];
        double room = Math.Max(LeastRoomDb, 2 * (points.Max() - points.Min()));
        return DecibelScale.Axis("Mean shielding over the band (dB)",
            points.Concat(limits.Select(l => Math.Clamp(l, points.Min() - room, points.Max() + room))), 0.1).AtBottom();
    }

    /// <summary>An axis with their names.</summary>
    public LabelledAxis Names() =>
        new(AxisPosition.Left, Frame.Names([.. Lots.Select(l => l.Lot)]).Select((name, i) => new PlaceLabel(i, name)))
        {
            StartPosition = 1,
            EndPosition = 0,
            Minimum = -0.5,
            Maximum = Lots.Length - 0.5,
        };

    private static IEnumerable<FigureRow> Mean(LotSummary lot, double row) =>
        (lot.MeanIntervalDb ?? lot.BetweenLotsIntervalDb) is { } interval
            ? [new(row, lot.MeanDb, interval.Low, interval.High)] : [];

    private static IEnumerable<FigureRow> Promise(LotSummary lot, double row) =>
        (lot.ToleranceLimitDb ?? lot.BetweenLotsLimitDb) is { } limit ? [new(row, null, limit, null)] : [];
}
