using SweepStats.Files.Campaigns;
using SweepStats.Report;

namespace SweepStats.Cli;

/// <summary>A report to write.</summary>
/// <param name="Folder">Where to.</param>
/// <param name="Threads">Threads to use.</param>
internal sealed record WantedReport(string Folder, int Threads)
{
    /// <summary>Page and charts.</summary>
    public required Func<ImmutableArray<ReportFile>> Pages { get; init; }

    /// <summary>The tables.</summary>
    public required IReadOnlyList<ReportTable> Tables { get; init; }

    /// <summary>Writes summary.json, given the other files.</summary>
    public required Action<ImmutableArray<InputFile>, Stream> Summary { get; init; }

    /// <summary>What prints the page to report.pdf; null where that is not asked for.</summary>
    public PrintingBrowser? Printer { get; init; }
}
