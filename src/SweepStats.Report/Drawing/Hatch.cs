using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>Grey with slanting lines, also on a grey print unlike any value.</summary>
internal static class Hatch
{
    private const double Spacing = 5;

    // Darker than the pale values of a map: a strip of three pixels must show.
    private static readonly OxyColor Ground = OxyColor.FromRgb(0xc6, 0xca, 0xce);

    /// <summary>Fills a box, in pixels; the lines go on from one box to the next.</summary>
    public static void Draw(IRenderContext rc, OxyRect box)
    {
        rc.DrawRectangle(box, Ground, OxyColors.Undefined, 0, EdgeRenderingMode.PreferSharpness);
        // Lines x + y = constant, cut off at the edges of the box and in step with those of the next box.
        for (double sum = Math.Ceiling((box.Left + box.Top) / Spacing) * Spacing; sum < box.Right + box.Bottom; sum += Spacing)
        {
            double left = Math.Max(box.Left, sum - box.Bottom);
            double right = Math.Min(box.Right, sum - box.Top);
            rc.DrawLine([new(left, sum - left), new(right, sum - right)], Ink.Grey, 0.8,
                EdgeRenderingMode.PreferGeometricAccuracy, null, LineJoin.Miter);
        }
    }
}
