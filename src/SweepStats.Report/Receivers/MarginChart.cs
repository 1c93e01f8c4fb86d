using OxyPlot;
using OxyPlot.Axes;
using SweepStats.Receivers;
using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;

namespace SweepStats.Report.Receivers;

/// <summary>Every station at its margin, silent or heard, and under each group what they show together.</summary>
internal static class MarginChart
{
    /// <summary>File name without extension.</summary>
    public const string FileName = "margins";

    private const int RowHeight = 24, Surroundings = 175, Most = 60;

    /// <summary>The chart; null where nothing is evidence.</summary>
    public static Chart? Of(ReceiverTest test)
    {
        if (test.Groups.IsEmpty)
        {
            return null;
        }

        MarginRows rows = MarginRows.Of(test, Most);
        string subtitle = MarginChartText.Subtitle(test, rows.Left);
        PlotModel model = Frame.Model(MarginChartText.Title, subtitle, Values(rows), rows.Axis()).With([
            new RowStripes { Colour = Ink.Veil(Ink.Faint, 130), Groups = rows.Stripes },
            Bars(rows, heard: false),
            Bars(rows, heard: true),
            Together(test, rows),
            Claim(test, rows),
        ]);
        return new Chart(FileName, ChartKind.Margins, MarginChartText.Title, MarginChartText.Description(test), model,
            Surroundings + (RowHeight * Math.Max(4, rows.Count)));
    }

    private static MarginMarks? Bars(MarginRows rows, bool heard)
    {
        MarginRow[] shown = [.. rows.Stations.Where(r => r.Observation.HeardCovered == heard)];
        return shown.Length == 0 ? null : new MarginMarks
        {
            Colour = heard ? Ink.Lines[1].Colour : Ink.Black,
            Rows = shown,
            Hollow = heard,
            Title = heard ? MarginChartText.Heard : MarginChartText.Silent,
        };
    }

    private static SpanBars? Together(ReceiverTest test, MarginRows rows) => rows.Intervals.Count == 0 ? null : new SpanBars
    {
        Colour = Ink.Blue,
        Spans = rows.Intervals,
        Title = MarginChartText.Interval(test.Question.Confidence),
    };

    private static Trace? Claim(ReceiverTest test, MarginRows rows) => test.Question.Claim is { } claim
        ? RequirementLine.Of([new(claim.Value, -0.5), new(claim.Value, rows.Count - 0.5)], MarginChartText.Claim(claim)) : null;

    private static LinearAxis Values(MarginRows rows) =>
        DecibelScale.Axis("Margin, and shielding shown (dB)", rows.Seen, 0.16).AtBottom();
}
