using SweepStats.Report.Drawing;
using SweepStats.Report.Pages;
using SweepStats.Statistics;

namespace SweepStats.Report;

/// <summary>Turns a result into the report a reader opens: one page and its charts.</summary>
public static class ReportBuilder
{
    /// <summary>
    /// Builds the report: <c>index.html</c>, then <c>charts/*.svg</c> in the order of the page, each followed by its PNG where
    /// asked for.
    /// </summary>
    /// <param name="result">What the analysis found.</param>
    /// <param name="options">What to show beside it.</param>
    /// <returns>Files with distinct paths; nothing is written to disk. The same input gives the same bytes.</returns>
    /// <exception cref="PngUnavailableException">PNG was asked for and this machine cannot draw text.</exception>
    public static ImmutableArray<ReportFile> Build(AnalysisResult result, ReportOptions options)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(options);
        var choice = ChartChoice.Of(ChartBook.Planned(result), result, options.Charts);
        return Files(choice.Kept, pictures => ReportPage.Of(new PageContent(result, options, pictures) { Choice = choice }),
            options.Png, result.Plan.Threads);
    }

    internal static ImmutableArray<ReportFile> Files(ImmutableArray<PlannedChart> planned,
        Func<ImmutableArray<ChartPicture>, byte[]> page, bool png, int threads)
    {
        ImmutableArray<DrawnChart> charts = Drawn(planned, png, threads);
        var files = ImmutableArray.CreateBuilder<ReportFile>();
        files.Add(new ReportFile("index.html", page([.. charts.Select(c => c.Picture)])));
        foreach (DrawnChart chart in charts)
        {
            files.Add(new ReportFile($"charts/{chart.Picture.Name}.svg", chart.Picture.File));
            if (chart.Model is { } model)
            {
                files.Add(new ReportFile($"charts/{chart.Picture.Name}.png", PngPicture.Of(model)));
            }
        }

        return files.ToImmutable();
    }

    // A model is let go as soon as it is drawn.
    private static ImmutableArray<DrawnChart> Drawn(ImmutableArray<PlannedChart> planned, bool png, int threads)
    {
        DrawnChart? Of(int i) =>
            planned[i].Model() is { } chart ? new DrawnChart(SvgPicture.Of(chart), png ? chart : null) : null;
        return [.. SideBySide.Of(planned.Length, threads, Of).OfType<DrawnChart>()];
    }

    /// <param name="Picture">As the page shows it.</param>
    /// <param name="Model">What else is to be drawn from; null where nothing is.</param>
    private sealed record DrawnChart(ChartPicture Picture, Chart? Model);
}
