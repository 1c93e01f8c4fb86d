using System.Collections.Immutable;
using System.Text;
using SweepStats.Report.Charts;
using SweepStats.Report.Pages;

namespace SweepStats.Report;

/// <summary>Turns a result into the report a reader opens: one page and its charts.</summary>
public static class ReportBuilder
{
    /// <summary>Builds the report: <c>index.html</c>, then <c>charts/*.svg</c> in the order of the page, each followed by its PNG where asked for.</summary>
    /// <param name="result">What the analysis found.</param>
    /// <param name="options">What to show beside it.</param>
    /// <returns>Files with distinct paths; nothing is written to disk. The same input gives the same bytes.</returns>
    /// <exception cref="PngUnavailableException">PNG was asked for and this machine cannot draw text.</exception>
    public static ImmutableArray<ReportFile> Build(AnalysisResult result, ReportOptions options)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(options);
        return Files(ChartBook.Of(result), pictures => ReportPage.Of(new PageContent(result, options, pictures)), options.Png, result.Plan.Threads);
    }

    internal static ImmutableArray<ReportFile> Files(ImmutableArray<Chart> charts, Func<ImmutableArray<ChartPicture>, string> page, bool png, int threads)
    {
        ImmutableArray<ChartPicture> pictures = Drawn(charts, threads);
        var files = ImmutableArray.CreateBuilder<ReportFile>();
        files.Add(Utf8("index.html", page(pictures)));
        for (int i = 0; i < charts.Length; i++)
        {
            files.Add(new ReportFile($"charts/{pictures[i].Name}.svg", pictures[i].File));
            if (png)
            {
                files.Add(new ReportFile($"charts/{pictures[i].Name}.png", PngPicture.Of(charts[i])));
            }
        }

        return files.ToImmutable();
    }

    // Each chart stands alone and goes to its own place, so the number of threads changes nothing.
    private static ImmutableArray<ChartPicture> Drawn(ImmutableArray<Chart> charts, int threads)
    {
        var pictures = new ChartPicture[charts.Length];
        Parallel.For(0, pictures.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, threads) }, i => pictures[i] = SvgPicture.Of(charts[i]));
        return ImmutableArray.Create(pictures);
    }

    private static ReportFile Utf8(string path, string text) => new(path, Encoding.UTF8.GetBytes(text));
}
