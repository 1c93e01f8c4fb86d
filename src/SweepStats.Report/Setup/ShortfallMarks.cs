using OxyPlot;
using SweepStats.Linearity;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Setup;

/// <summary>
/// Shortfalls with their limits as bars; one without limits is hollow, so that it does not look as if it had some.
/// </summary>
internal sealed class ShortfallMarks : ChartSeries
{
    private const double Cap = 5;
    private const double Size = 4.4;
    private const double SampleHalf = 9;

    /// <summary>The steps of the source; all with limits or all without.</summary>
    public required IReadOnlyList<LinearityStep> Steps { get; init; }

    /// <inheritdoc/>
    public override bool IsEmpty => Steps.Count == 0;

    protected override void Draw(IRenderContext rc)
    {
        foreach (LinearityStep step in Steps)
        {
            ScreenPoint centre = At(step.HighDbm, step.ShortfallDb);
            if (step.Interval is { } limits)
            {
                // Screens count down: the upper limit has the smaller y. A limit outside the picture is drawn to its frame,
                // without a cap.
                double upper = YAxis.Transform(limits.High);
                double lower = YAxis.Transform(limits.Low);
                Stroke(rc, Colour, 1.4, null, new(centre.X, Math.Max(upper, Top)), new(centre.X, Math.Min(lower, Bottom)));
                Caps(rc, centre.X, new[] { upper, lower }.Where(y => y >= Top && y <= Bottom));
            }

            Mark(rc, centre, step.Interval is null);
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box)
    {
        bool hollow = Steps[0].Interval is null;
        if (!hollow)
        {
            double x = box.Center.X;
            Stroke(rc, Colour, 1.4, null, new(x, box.Center.Y - SampleHalf), new(x, box.Center.Y + SampleHalf));
            Caps(rc, x, [box.Center.Y - SampleHalf, box.Center.Y + SampleHalf]);
        }

        Mark(rc, box.Center, hollow);
    }

    private void Caps(IRenderContext rc, double x, IEnumerable<double> ends)
    {
        foreach (double y in ends)
        {
            Stroke(rc, Colour, 1.4, null, new(x - Cap, y), new(x + Cap, y));
        }
    }

    private void Mark(IRenderContext rc, ScreenPoint at, bool hollow) =>
        rc.DrawMarker(at, MarkerType.Circle, null, Size, hollow ? OxyColors.White : Colour, Colour, 1.4,
            EdgeRenderingMode.PreferGeometricAccuracy);
}
