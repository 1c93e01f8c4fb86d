using OxyPlot;
using SweepStats.Linearity;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Setup;

/// <summary>Where the receiver is 1 dB short: a diamond on the line, and a thin line down to the level of the source.</summary>
internal sealed class CompressionMark : ChartSeries
{
    private const double Size = 6;

    /// <summary>The source level in dBm.</summary>
    public required double SourceDbm { get; init; }

    protected override void Draw(IRenderContext rc)
    {
        ScreenPoint at = At(SourceDbm, LinearityCurve.CompressionDb);
        Stroke(rc, Colour, 1, [4, 3], at, new ScreenPoint(at.X, Bottom));
        Mark(rc, at);
    }

    protected override void DrawSample(IRenderContext rc, OxyRect box) => Mark(rc, box.Center);

    private void Mark(IRenderContext rc, ScreenPoint at) =>
        rc.DrawMarker(at, MarkerType.Diamond, null, Size, OxyColors.White, Colour, 2, EdgeRenderingMode.PreferGeometricAccuracy);
}
