using SweepStats.Receivers;
using SweepStats.Report.Drawing;

namespace SweepStats.Report.Receivers;

/// <summary>The picture of a test with receivers.</summary>
public static class ReceiverReport
{
    /// <summary>Builds <c>charts/margins.svg</c>, followed by its PNG where asked for; nothing where nothing is
    /// evidence.</summary>
    /// <param name="test">The test.</param>
    /// <param name="png">Also PNG.</param>
    /// <exception cref="PngUnavailableException">PNG was asked for and this machine cannot draw text.</exception>
    public static ImmutableArray<ReportFile> Build(ReceiverTest test, bool png)
    {
        ArgumentNullException.ThrowIfNull(test);
        return MarginChart.Of(test) is not { } chart ? []
            : [new ReportFile($"charts/{chart.Name}.svg", SvgPicture.Of(chart).File), .. png
                ? [new ReportFile($"charts/{chart.Name}.png", PngPicture.Of(chart))] : Array.Empty<ReportFile>()];
    }
}
