using SweepStats.Report.Drawing;

namespace SweepStats.Report.Pages;

/// <summary>What the parts of the page may show.</summary>
/// <param name="Result">What the analysis found.</param>
/// <param name="Options">What to show beside it.</param>
/// <param name="Charts">The charts that were drawn.</param>
internal sealed record PageContent(AnalysisResult Result, ReportOptions Options, ImmutableArray<ChartPicture> Charts)
{
    /// <summary>Which of all charts these are.</summary>
    public required ChartChoice Choice { get; init; }
}
