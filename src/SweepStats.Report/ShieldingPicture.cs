using SweepStats.Report.Drawing;
using SweepStats.Report.Specimens;
using SweepStats.Shielding;

namespace SweepStats.Report;

/// <summary>The shielding of one specimen over frequency as a picture by itself, as the report shows it.</summary>
public static class ShieldingPicture
{
    private const string Name = "shielding";

    /// <summary>As SVG, right on a machine without fonts too.</summary>
    /// <param name="result">What the analysis found.</param>
    /// <param name="curve">One of its curves.</param>
    public static byte[] Svg(AnalysisResult result, ShieldingCurve curve) => SvgPicture.Of(Drawn(result, curve)).File;

    /// <summary>As PNG.</summary>
    /// <param name="result">What the analysis found.</param>
    /// <param name="curve">One of its curves.</param>
    /// <exception cref="PngUnavailableException">This machine cannot draw text.</exception>
    public static byte[] Png(AnalysisResult result, ShieldingCurve curve) => PngPicture.Of(Drawn(result, curve));

    private static Chart Drawn(AnalysisResult result, ShieldingCurve curve)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(curve);
        return ShieldingChart.Of(result, curve, Name);
    }
}
