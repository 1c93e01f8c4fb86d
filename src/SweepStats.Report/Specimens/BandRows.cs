using OxyPlot;
using SweepStats.Quantities;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;

namespace SweepStats.Report.Specimens;

/// <summary>
/// One figure a row along a dB axis: a value with its interval, or a bound as an arrow that points on to higher shielding.
/// </summary>
internal sealed class BandRows : ChartSeries
{
    private const double Cap = 5;
    private const double Arrow = 30;
    private const double LabelDistance = 7;

    /// <summary>Figures: row, and limits; a value only where there is one.</summary>
    public required IReadOnlyList<FigureRow> Figures { get; init; }

    /// <summary>Marker of a value with its interval.</summary>
    public MarkerType Marker { get; init; } = MarkerType.Circle;

    /// <summary>Whether that marker is hollow.</summary>
    public bool Hollow { get; init; }

    /// <summary>Whether a value with its interval has its figure beside it.</summary>
    public bool Labelled { get; init; } = true;

    /// <inheritdoc/>
    public override bool IsEmpty => Figures.Count == 0;

    protected override void Draw(IRenderContext rc)
    {
        foreach ((double row, double? value, double low, double? high) in Figures)
        {
            ScreenPoint left = At(low, row);
            if (value is { } v && high is { } h)
            {
                // A limit outside the picture is drawn to its frame, without a foot.
                Bar(rc, EndAt(low, row), EndAt(h, row), At(v, row));
                if (Labelled)
                {
                    Label(rc, At(h, row), PrintedLevel.Ratio(v));
                }
            }
            else if (value is { } alone)
            {
                Alone(rc, At(alone, row));
                Label(rc, At(alone, row), $"{PrintedLevel.Ratio(alone)}, {SpecimenChartWords.UnrepeatedLegend}");
            }
            else
            {
                Open(rc, left, Arrow);
                Label(rc, new ScreenPoint(left.X + Arrow, left.Y), PrintedLevel.Bound(new Decibels(low)));
            }
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
        if (Figures.All(f => f.Value is not null && f.High is null))
        {
            Alone(rc, box.Center);
        }
        else if (Figures.Any(f => f.Value is not null))
        {
            var (left, right) = (new ScreenPoint(box.Left, box.Center.Y), new ScreenPoint(box.Right - 4, box.Center.Y));
            Bar(rc, new(left, true), new(right, true), new(box.Center.X - 2, box.Center.Y));
        }
        else
        {
            Open(rc, new ScreenPoint(box.Left + 4, box.Center.Y), box.Width - 6);
        }
    }

    private void Alone(IRenderContext rc, ScreenPoint at) =>
        rc.DrawMarker(at, MarkerType.Circle, null, 4, OxyColors.White, Colour, 1.4, EdgeRenderingMode.PreferGeometricAccuracy);

    private double Inside(double value) => Math.Clamp(value, XAxis.ActualMinimum, XAxis.ActualMaximum);

    private BarEnd EndAt(double value, double row) => new(At(Inside(value), row), Inside(value) == value);

    private void Bar(IRenderContext rc, BarEnd low, BarEnd high, ScreenPoint value)
    {
        Stroke(rc, Colour, 1.4, null, low.At, high.At);
        if (low.HasFoot)
        {
            Foot(rc, low.At);
        }

        if (high.HasFoot)
        {
            Foot(rc, high.At);
        }

        rc.DrawMarker(value, Marker, null, Hollow ? 4.6 : 4, Hollow ? OxyColors.White : Colour, Colour, Hollow ? 1.4 : 1,
            EdgeRenderingMode.PreferGeometricAccuracy);
    }

    private void Open(IRenderContext rc, ScreenPoint foot, double length)
    {
        var tip = new ScreenPoint(foot.X + length, foot.Y);
        Foot(rc, foot);
        Stroke(rc, Colour, 1.4, null, foot, tip);
        Stroke(rc, Colour, 1.4, null, new(tip.X - Cap, tip.Y - Cap), tip, new(tip.X - Cap, tip.Y + Cap));
    }

    private void Label(IRenderContext rc, ScreenPoint end, string text) => rc.DrawText(
        new ScreenPoint(end.X + LabelDistance, end.Y), text, Colour, ActualFont, ActualFontSize, ActualFontWeight, 0,
        HorizontalAlignment.Left, VerticalAlignment.Middle);

    private void Foot(IRenderContext rc, ScreenPoint at) =>
        Stroke(rc, Colour, 1.4, null, new(at.X, at.Y - Cap), new(at.X, at.Y + Cap));

    /// <summary>An end of a bar, and whether it has a foot.</summary>
    private readonly record struct BarEnd(ScreenPoint At, bool HasFoot);
}
