using System.Collections.Immutable;
using System.CommandLine;
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
            Description = "Charts to draw: all up to 25 specimens unless given; above, a summary with the weakest specimens",
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

    /// <summary>Page and charts, then the tables, then summary.json.</summary>
    /// <param name="target">The folder.</param>
    /// <param name="pages">Page and charts.</param>
    /// <param name="terminal">Told where the charts cannot be drawn.</param>
    /// <param name="tables">Writes the tables and returns summary.json.</param>
    /// <returns>summary.json; null after telling why nothing was written.</returns>
    public static byte[]? Write(string target, Func<ImmutableArray<ReportFile>> pages, Terminal terminal, Func<ReportFolder, byte[]> tables)
    {
        try
        {
            using var folder = new ReportFolder(target);
            foreach (ReportFile file in pages())
            {
                Put(folder, file.Path, stream => stream.Write(file.Content));
            }

            byte[] summary = tables(folder);
            Put(folder, SummaryJson.FileName, stream => stream.Write(summary));
            folder.Commit();
            return summary;
        }
        catch (PngUnavailableException e)
        {
            terminal.Error.WriteLine($"sweepstats: {e.Message}");
            return null;
        }
    }

    public static void Put(ReportFolder folder, string path, Action<Stream> write)
    {
        using Stream stream = folder.Create(path);
        write(stream);
    }
}
