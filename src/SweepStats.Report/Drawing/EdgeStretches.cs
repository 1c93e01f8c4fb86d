using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>
/// A bar along the upper edge over the places on the axis that are marked: hundreds of them stay one bar where single marks would
/// hide the curves.
/// </summary>
internal sealed class EdgeStretches : ChartSeries
{
    private const double Height = 6;
    private const double Narrowest = 4;

    /// <summary>All places, in their order.</summary>
    public required IReadOnlyList<double> Places { get; init; }

    /// <summary>Which of them are marked.</summary>
    public required IReadOnlyList<bool> Marked { get; init; }

    /// <inheritdoc/>
    public override bool IsEmpty => !Marked.Contains(true);

    protected override void Draw(IRenderContext rc)
    {
        foreach ((int from, int to) in Runs(Places.Count, i => Marked[i]))
        {
            double left = Between(from - 1, from), right = Between(to - 1, to);
            double missing = Math.Max(0, Narrowest - (right - left)) / 2;
            Bar(rc, new OxyRect(left - missing, Top, right - left + (2 * missing), Height));
        }
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) =>
        Bar(rc, new OxyRect(box.Left, box.Center.Y - (Height / 2), box.Width - 4, Height));

    // A place reaches halfway to its neighbours, the first and the last to the frame.
    private double Between(int a, int b) =>
        (XAxis.Transform(Places[Math.Max(0, a)]) + XAxis.Transform(Places[Math.Min(Places.Count - 1, b)])) / 2;

    private void Bar(IRenderContext rc, OxyRect box) =>
        rc.DrawRectangle(box, Colour, OxyColors.Undefined, 0, EdgeRenderingMode.PreferGeometricAccuracy);
}
