using System.CommandLine;
using System.Runtime.ExceptionServices;
using SweepStats.Files.Campaigns;
using SweepStats.Files.Results;
using SweepStats.Report;
using SweepStats.Report.Drawing;
using SweepStats.Storage;

namespace SweepStats.Cli;

/// <summary>Writes a report folder, whole or not at all.</summary>
internal static class ReportOutput
{
    /// <summary>The option that names the report's folder; null where it is not given.</summary>
    public static Option<string?> To(string description) => new("--out") { Description = description, HelpName = "FOLDER" };

    /// <summary>The option that asks for PNG beside SVG.</summary>
    public static Option<bool> Png() => new("--png") { Description = "Also write each chart as PNG" };

    /// <summary>Refuses PNG where no folder is to hold it.</summary>
    public static void NeedFolder(Command command, Option<bool> png, Option<string?> to) => command.Validators.Add(result =>
    {
        if (result.GetValue(png) && result.GetResult(to) is null)
        {
            result.AddError("--png draws the chart of a report, and no --out says where; add --out FOLDER");
        }
    });

    /// <summary>The option that asks for the page printed by a browser.</summary>
    public static Option<bool> Pdf() => new("--pdf") { Description = "Also print the page to report.pdf; needs Chromium" };

    /// <summary>The option that asks for one workbook of all tables.</summary>
    public static Option<bool> Xlsx() => new("--xlsx") { Description = "Also write the tables as one spreadsheet, results.xlsx" };

    /// <summary>What <see cref="Charts"/> is given where none are wanted.</summary>
    public const string NoCharts = "none";

    private const string PageName = "index.html";
    private const string PdfName = "report.pdf";
    private const string SomeCharts = "summary";
    private const string AllCharts = "all";

    /// <summary>The option that says how many charts are drawn; null leaves it to the number of specimens.</summary>
    public static Option<string?> Charts()
    {
        var option = new Option<string?>("--charts")
        {
            Description = "Charts to draw: all up to 25 specimens unless given; above, a summary with the five weakest specimens",
            HelpName = string.Join('|', NoCharts, SomeCharts, AllCharts),
        };
        option.AcceptOnly(NoCharts, SomeCharts, AllCharts);
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

    /// <summary>Page, charts and tables at the same time, then the printed page and summary.json, which lists them all.</summary>
    /// <param name="report">What to write.</param>
    /// <param name="terminal">Told where the charts cannot be drawn.</param>
    /// <returns>Whether it was written; where not, why was told.</returns>
    /// <exception cref="IOException">A file cannot be written, or the page cannot be printed.</exception>
    public static bool Write(WantedReport report, Terminal terminal)
    {
        using var folder = new ReportFolder(report.Folder);
        try
        {
            Fill(folder, report);
            folder.Commit(waits => terminal.Error.WriteLine($"sweepstats: {waits}"));
            return true;
        }
        catch (AggregateException e) when (Foremost<PngUnavailableException>(e) is { } unavailable)
        {
            terminal.Error.WriteLine($"sweepstats: {unavailable.Message}");
            return false;
        }
        catch (AggregateException e) when ((Foremost<IOException>(e)
            ?? (Exception?)Foremost<UnauthorizedAccessException>(e)) is { } first)
        {
            ExceptionDispatchInfo.Throw(first);
            throw;
        }
    }

    private static void Fill(ReportFolder folder, WantedReport report)
    {
        var threads = new ParallelOptions { MaxDegreeOfParallelism = report.Threads };
        Action[] parts = [() => Put(folder, report.Pages(), threads),
            .. report.Tables.Select(table => (Action)(() => Put(folder, table)))];
        // Whatever goes wrong first is told as it would be on one thread.
        Parallel.Invoke(threads, parts);
        if (report.Printer is { } printer)
        {
            byte[] printed = printer.Print(folder.Gathered(PageName));
            Put(folder, new ReportTable(PdfName, stream => stream.Write(printed)));
        }

        ImmutableArray<InputFile> written = folder.Written();
        Put(folder, new ReportTable(SummaryJson.FileName, stream => report.Summary(written, stream)));
    }

    // Page and charts are written within a part that is one of several: what went wrong there is wrapped twice.
    private static T? Foremost<T>(AggregateException wrapped)
        where T : Exception => wrapped.Flatten().InnerExceptions.OfType<T>().FirstOrDefault();

    private static void Put(ReportFolder folder, ImmutableArray<ReportFile> files, ParallelOptions threads) =>
        Parallel.ForEach(files, threads, file => Put(folder, new ReportTable(file.Path, stream => stream.Write(file.Content))));

    private static void Put(ReportFolder folder, ReportTable table)
    {
        try
        {
            using Stream stream = folder.Create(table.Name);
            table.Write(stream);
        }
        catch (Exception e) when (e is IOException and not ScratchFileException or UnauthorizedAccessException)
        {
            throw folder.Told(e);
        }
    }
}
