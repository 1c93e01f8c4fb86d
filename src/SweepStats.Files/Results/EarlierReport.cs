using System.Text.Json;

namespace SweepStats.Files.Results;

/// <summary>Tells an earlier report of this program from anything else, and removes nothing but what belongs to one.</summary>
internal static class EarlierReport
{
    /// <summary>How summary.json names the program.</summary>
    private const string Program = "sweepstats";

    private const string Charts = "charts";

    private static readonly string[] Files = ["index.html", ShieldingCsv.FileName, BandsCsv.FileName, FindingsCsv.FileName, SummaryJson.FileName];

    private static readonly string[] ChartExtensions = [".svg", ".png"];

    /// <summary>Why a folder may not be replaced by a report; null for an empty folder and for one that holds an earlier report and nothing else.</summary>
    /// <param name="folder">An existing folder.</param>
    /// <param name="shown">Its name in messages.</param>
    public static ReadFault? Objection(string folder, string shown)
    {
        try
        {
            (List<string> own, List<string> foreign) = Sorted(folder);
            string? mine = foreign.Order(StringComparer.Ordinal).FirstOrDefault();
            if (mine is not null)
            {
                return new ReadFault(shown, null, $"the folder holds '{mine}', which is no part of an earlier report", "choose another folder with --out, or move that file away");
            }

            return own.Count == 0 || IsOurs(Path.Combine(folder, SummaryJson.FileName))
                ? null
                : new ReadFault(
                    shown, null, $"the folder holds '{own.Order(StringComparer.Ordinal).First()}' but no {SummaryJson.FileName} of {Program}, so it is not known as an earlier report", "choose another folder with --out, or move that file away");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new ReadFault(shown, null, "the folder cannot be listed", "choose another folder with --out, or check its permissions");
        }
    }

    /// <summary>Removes the files of a report that was moved aside; what the system left beside them goes into the new report.</summary>
    /// <returns>Whether the folder is gone; false where something else lies in it, which then stays.</returns>
    public static bool Remove(string folder, string successor)
    {
        foreach (string file in Sorted(folder).Own)
        {
            string full = Path.Combine(folder, file);
            if (File.Exists(full) || new FileInfo(full).LinkTarget is not null)
            {
                File.Delete(full);
            }
        }

        foreach (string litter in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Where(f => OsLitter.Is(Path.GetFileName(f))).ToArray())
        {
            string to = Path.Combine(successor, Path.GetRelativePath(folder, litter));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Move(litter, to);
        }

        string charts = Path.Combine(folder, Charts);
        if (Directory.Exists(charts) && !Directory.EnumerateFileSystemEntries(charts).Any())
        {
            Directory.Delete(charts);
        }

        bool empty = !Directory.EnumerateFileSystemEntries(folder).Any();
        if (empty)
        {
            Directory.Delete(folder);
        }

        return empty;
    }

    private static (List<string> Own, List<string> Foreign) Sorted(string folder)
    {
        List<string> own = [];
        List<string> foreign = [];
        foreach (FileSystemInfo entry in new DirectoryInfo(folder).EnumerateFileSystemInfos())
        {
            if (entry is DirectoryInfo { Name: Charts, LinkTarget: null } charts)
            {
                own.Add(Charts);
                foreach (FileSystemInfo chart in charts.EnumerateFileSystemInfos())
                {
                    bool known = chart is FileInfo && ChartExtensions.Contains(chart.Extension);
                    Sort(chart, $"{Charts}/{chart.Name}", known);
                }
            }
            else
            {
                Sort(entry, entry.Name, entry is FileInfo && Files.Contains(entry.Name));
            }
        }

        return (own, foreign);

        void Sort(FileSystemInfo entry, string path, bool known)
        {
            // A hidden folder, such as that of a version control, is no litter but somebody's work.
            if (entry is DirectoryInfo || !OsLitter.Is(entry.Name))
            {
                (known ? own : foreign).Add(path);
            }
        }
    }

    private static bool IsOurs(string summary)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllBytes(summary));
            return document.RootElement is { ValueKind: JsonValueKind.Object } root
                && root.TryGetProperty("program", out JsonElement program) && program.ValueKind == JsonValueKind.String && program.ValueEquals(Program);
        }
        catch (Exception e) when (e is JsonException or FileNotFoundException)
        {
            return false;
        }
    }
}
