using SweepStats.Report.Drawing;

namespace SweepStats.Report.Fields;

/// <summary>The chart of what is left of a pulse.</summary>
public static class FieldReport
{
    /// <summary>
    /// Builds <c>charts/pulse.svg</c>, followed by its PNG where asked for; nothing where nothing is told of any specimen.
    /// </summary>
    /// <param name="result">What the analysis found.</param>
    /// <param name="png">Also PNG.</param>
    /// <exception cref="PngUnavailableException">PNG was asked for and this machine cannot draw text.</exception>
    public static ImmutableArray<ReportFile> Build(AnalysisResult result, bool png)
    {
        ArgumentNullException.ThrowIfNull(result);
        return PulseChart.Of(result, "pulse") is not { } chart ? []
            : [new("charts/pulse.svg", SvgPicture.Of(chart).File), .. png ? [new("charts/pulse.png", PngPicture.Of(chart))]
                : Array.Empty<ReportFile>()];
    }
}
