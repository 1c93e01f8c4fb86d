using System.Collections.Immutable;
using System.CommandLine;
using System.Runtime.ExceptionServices;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Report;

namespace SweepStats.Cli;

/// <summary>Writes a report folder, whole or not at all.</summary>
internal static class ReportOutput
{
    public static Option<string?> To(string description) => new("--out") { Description = description, HelpName = "FOLDER" };

    public static Option<bool> Png() => new("--png") { Description = "Also write each chart as PNG" };

    /// <summary>What <see cref="Charts"/> is given where none are wanted.</summary>
    public const string NoCharts = "none";

    private const string SomeCharts = "summary";
    private const string AllCharts = "all";

    public static Option<string?> Charts()
    {
        var option = new Option<string?>("--charts")
        {
            Description = "Charts to draw: all up to 25 specimens unless given; above, a summary with the five weakest specimens",
            HelpName = string.Join('|', NoCharts, SomeCharts, AllCharts),
        };
        option.AcceptOnlyFromAmong(NoCharts, SomeCharts, AllCharts);
        return option;
    }

    /// <summary>What a word of <see cref="Charts"/> stands for.</summary>
    public static ChartsDrawn? Drawn(string? word) => word switch
    {
        NoCharts => ChartsDrawn.None,
        SomeCharts => ChartsDrawn.Summary,
        AllCharts => ChartsDrawn.All,
        _ => null,
    };

    /// <summary>Page, charts and tables at the same time, then summary.json, which lists them.</summary>
    /// <param name="target">The folder, and the threads to use.</param>
    /// <param name="pages">Page and charts.</param>
    /// <param name="tables">The tables.</param>
    /// <param name="summary">summary.json, given the other files.</param>
    /// <param name="terminal">Told where the charts cannot be drawn.</param>
    /// <returns>summary.json; null after telling why nothing was written.</returns>
    public static byte[]? Write(
        (string Folder, int Threads) target, Func<ImmutableArray<ReportFile>> pages, IEnumerable<ReportTable> tables, Func<ImmutableArray<InputFile>, byte[]> summary, Terminal terminal)
    {
        try
        {
            using var folder = new ReportFolder(target.Folder);
            var threads = new ParallelOptions { MaxDegreeOfParallelism = target.Threads };
            Action[] parts = [() => Put(folder, pages(), threads), .. tables.Select(table => (Action)(() => Put(folder, table)))];
            // Whatever goes wrong first is told as it would be on one thread.
            Parallel.Invoke(threads, parts);
            byte[] written = summary(folder.Written());
            Put(folder, new ReportTable(SummaryJson.FileName, stream => stream.Write(written)));
            folder.Commit();
            return written;
        }
        catch (AggregateException e) when (Foremost<PngUnavailableException>(e) is { } unavailable)
        {
            terminal.Error.WriteLine($"sweepstats: {unavailable.Message}");
            return null;
        }
        catch (AggregateException e) when ((Foremost<IOException>(e) ?? (Exception?)Foremost<UnauthorizedAccessException>(e)) is { } first)
        {
            ExceptionDispatchInfo.Throw(first);
            throw;
        }
    }

    // Page and charts are written within a part that is one of several: what went wrong there is wrapped twice.
    private static T? Foremost<T>(AggregateException wrapped)
        where T : Exception => wrapped.Flatten().InnerExceptions.OfType<T>().FirstOrDefault();

    private static void Put(ReportFolder folder, ImmutableArray<ReportFile> files, ParallelOptions threads) =>
        Parallel.ForEach(files, threads, file => Put(folder, new ReportTable(file.Path, stream => stream.Write(file.Content))));

    private static void Put(ReportFolder folder, ReportTable table)
    {
        using Stream stream = folder.Create(table.Name);
        table.Write(stream);
    }
}
