using System.Security.Cryptography;
using System.Text.Json;
using SweepStats.Files.Places;

namespace SweepStats.Files.Results;

/// <summary>Tells an earlier report of this program from anything else, and removes nothing but what belongs to one.</summary>
internal static class EarlierReport
{
    /// <summary>How summary.json names the program.</summary>
    private const string Program = "sweepstats";

    private const string Charts = "charts";

    /// <summary>
    /// Why a folder may not be replaced by a report; null for an empty folder and for one that holds an earlier report and
    /// nothing else.
    /// </summary>
    /// <param name="folder">An existing folder.</param>
    /// <param name="shown">Its name in messages.</param>
    public static ReadFault? Objection(string folder, string shown)
    {
        try
        {
            const string remedy = "choose another folder with --out, or move that file away";
            Dictionary<string, string>? listed = ListedIn(folder);
            (_, List<string> foreign) = Sorted(folder, listed ?? []);
            if (foreign.Order(StringComparer.Ordinal).FirstOrDefault() is not { } mine)
            {
                return null;
            }

            string problem = listed is null
                ? $"but no {SummaryJson.FileName} of {Program}, so it is not known as an earlier report"
                : listed.ContainsKey(mine) ? "was changed after the report was written" : "which is no part of an earlier report";
            string joined = listed is null ? $"'{mine}' {problem}"
                : $"'{mine}', {(listed.ContainsKey(mine) ? "which " : string.Empty)}{problem}";
            return new ReadFault(shown, null, $"the folder holds {joined}", remedy);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new ReadFault(shown, null,
                "the folder or a file in it cannot be read, so it is not known as an earlier report",
                "choose another folder with --out, or close programs that hold its files and check the permissions");
        }
    }

    /// <summary>Paths of the files of an earlier report, with '/' between folders.</summary>
    /// <param name="folder">An existing folder.</param>
    public static IReadOnlyList<string> Own(string folder) => Sorted(folder, ListedIn(folder) ?? []).Own;

    /// <summary>
    /// Removes the files of a report that was moved aside; what the system left beside them goes into the new report.
    /// </summary>
    /// <returns>Whether the folder is gone; false where something else lies in it, which then stays.</returns>
    public static bool Remove(string folder, string successor)
    {
        // A report may have been made read-only to keep it; it was the folder above that allowed to replace it.
        using WorkableFolder outer = new(folder), inner = new(Path.Combine(folder, Charts));
        // Sorted once more: a file that was changed or came meanwhile is not removed. The summary goes last, since by it a run
        // that is killed here leaves something that the next run knows.
        foreach (string file in Own(folder).OrderBy(file => file == SummaryJson.FileName))
        {
            RemoveFile(Path.Combine(folder, file));
        }

        RemoveGathered(folder);
        MoveLitter(folder, successor);
        RemoveIfEmpty(Path.Combine(folder, Charts));
        return RemoveIfEmpty(folder);
    }

    private static void RemoveFile(string file)
    {
        if (File.Exists(file) || new FileInfo(file).LinkTarget is not null)
        {
            File.Delete(file);
        }
    }

    private static void RemoveGathered(string folder)
    {
        foreach (FileSystemInfo gathered in new DirectoryInfo(folder).GetFileSystemInfos()
            .Where(entry => HiddenName.IsOurs(entry.Name)))
        {
            (gathered as DirectoryInfo)?.Delete(recursive: true);
            (gathered as FileInfo)?.Delete();
        }
    }

    private static void MoveLitter(string folder, string successor)
    {
        foreach (string litter in Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(f => OsLitter.Is(Path.GetFileName(f))).ToArray())
        {
            string to = Path.Combine(successor, Path.GetRelativePath(folder, litter));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Move(litter, to);
        }
    }

    private static bool RemoveIfEmpty(string folder)
    {
        bool empty = Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any();
        if (empty)
        {
            Directory.Delete(folder);
        }

        return empty;
    }

    /// <summary>Whether a summary.json was written by this program.</summary>
    /// <param name="file">Where it is.</param>
    public static bool IsSummary(string file)
    {
        try
        {
            return Listed(file) is not null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>SHA-256 of a file in lower-case hexadecimal.</summary>
    public static string Hash(string file)
    {
        using FileStream stream = File.OpenRead(file);
        return Convert.ToHexStringLower(SHA256.HashData(stream));
    }

    private static (List<string> Own, List<string> Foreign) Sorted(string folder, Dictionary<string, string> listed)
    {
        List<string> own = [];
        List<string> foreign = [];
        foreach (FileSystemInfo entry in new DirectoryInfo(folder).EnumerateFileSystemInfos())
        {
            if (entry is DirectoryInfo { Name: Charts, LinkTarget: null } charts)
            {
                FileSystemInfo[] within = charts.GetFileSystemInfos();
                foreach (FileSystemInfo chart in within)
                {
                    Sort(chart, $"{Charts}/{chart.Name}");
                }

                if (within.Length == 0)
                {
                    foreign.Add(Charts);
                }
            }
            else
            {
                Sort(entry, entry.Name);
            }
        }

        return (own, foreign);

        void Sort(FileSystemInfo entry, string path)
        {
            bool known = entry is FileInfo { LinkTarget: null } && listed.TryGetValue(path, out string? hash)
                && UnixCalls.IsRegularFile(entry.FullName) != false && (hash.Length == 0 || hash == Hash(entry.FullName));
            // A hidden folder, such as that of a version control, is no litter but somebody's work; but for one that a run
            // gathers.
            if (entry is DirectoryInfo ? !HiddenName.IsOurs(entry.Name) : !OsLitter.Is(entry.Name))
            {
                (known ? own : foreign).Add(path);
            }
        }
    }

    // Where files are exchanged one by one, a run that was killed meanwhile left the summary of its own in the folder it
    // gathered.
    private static Dictionary<string, string>? ListedIn(string folder)
    {
        Dictionary<string, string>? listed = Listed(Path.Combine(folder, SummaryJson.FileName));
        foreach (DirectoryInfo gathered in new DirectoryInfo(folder).EnumerateDirectories()
            .Where(inner => inner.LinkTarget is null && HiddenName.IsOurs(inner.Name)))
        {
            foreach ((string path, string hash) in Listed(Path.Combine(gathered.FullName, SummaryJson.FileName)) ?? [])
            {
                listed ??= new Dictionary<string, string>(StringComparer.Ordinal);
                listed[path] = listed.TryGetValue(path, out string? other) && other != hash && EarlierIs(folder, path, other)
                    ? other : hash;
            }
        }

        return listed;
    }

    // Which of both reports a file is of, its bytes tell.
    private static bool EarlierIs(string folder, string path, string hash) =>
        Path.Combine(folder, path) is var file && File.Exists(file) && Hash(file) == hash;

    // What a summary of this program lists, and itself without a hash; null where there is none of ours, or where somebody
    // changed it, so that something else stands where a text or a list belongs.
    private static Dictionary<string, string>? Listed(string summary)
    {
        try
        {
            if (UnixCalls.IsRegularFile(summary) == false || SummaryList.Read(summary) is not { Program: Program } list)
            {
                return null;
            }

            var listed = new Dictionary<string, string>(StringComparer.Ordinal) { [SummaryJson.FileName] = string.Empty };
            foreach (SummaryListEntry? file in list.ReportFiles ?? [])
            {
                if (file is { Path: { } path, Sha256: { Length: 64 } hash })
                {
                    listed.TryAdd(path, hash);
                }
            }

            return listed;
        }
        catch (Exception e) when (e is JsonException or FileNotFoundException)
        {
            return null;
        }
    }
}
