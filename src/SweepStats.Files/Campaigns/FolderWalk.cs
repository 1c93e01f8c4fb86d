using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>All files of a campaign, hidden ones and what the system leaves behind left out, in natural order.</summary>
/// <param name="Files">Paths relative to the campaign, with '/'.</param>
/// <param name="Faults">Links that lead elsewhere, folders that cannot be listed.</param>
internal sealed record FolderWalk(ImmutableArray<string> Files, ImmutableArray<ReadFault> Faults)
{
    /// <summary>Said where the folder is no campaign for the number of its files; null where it may be one.</summary>
    public ReadFault? TooMany { get; private init; }

    private const int DeepestFolder = 8;

    // A campaign of thousands of sweeps has a tenth of it; a whole disk named by mistake would be walked for minutes.
    private const int MostFiles = 100_000;

    public static FolderWalk Through(string root)
    {
        List<string> files = [];
        List<ReadFault> faults = [];
        Visit(new DirectoryInfo(root), "", files, faults);
        if (files.Count >= MostFiles)
        {
            var tooMany = new ReadFault(".", null, FormattableString.Invariant($"the folder holds more than {MostFiles} files"),
                "name the folder of one campaign");
            return new FolderWalk([], [tooMany]) { TooMany = tooMany };
        }

        files.Sort(NaturalOrder.Instance);
        return new FolderWalk([.. files], [.. faults.OrderBy(f => f.File, NaturalOrder.Instance)]);
    }

    /// <summary>Whether a file really lies within a folder, links followed.</summary>
    public static bool LiesWithin(string root, string path)
    {
        return RealPath.Of(path) is { } real && RealPath.Of(root) is { } folder
            && real.StartsWith(folder.TrimEnd('/', '\\') + Path.DirectorySeparatorChar, StringComparison.Ordinal);
    }

    private static void Visit(DirectoryInfo folder, string prefix, List<string> files, List<ReadFault> faults)
    {
        foreach (FileSystemInfo entry in files.Count >= MostFiles ? [] : Listed(folder, prefix, faults))
        {
            string path = prefix + entry.Name;
            if (OsLitter.Is(entry.Name) || (OperatingSystem.IsWindows() && entry.Attributes.HasFlag(FileAttributes.Hidden)))
            {
                continue;
            }

            if (entry is not DirectoryInfo inner)
            {
                files.Add(path);
            }
            else if (inner.LinkTarget is not null)
            {
                faults.Add(new ReadFault(path, null, "the folder is a link", "put the folder itself into the campaign"));
            }
            else if (prefix.Count(c => c == '/') >= DeepestFolder)
            {
                faults.Add(new ReadFault(path, null, "the folder lies too deep",
                    "use covered/<lot>/<specimen>/<placement> at most"));
            }
            else
            {
                Visit(inner, path + "/", files, faults);
            }
        }
    }

    private static FileSystemInfo[] Listed(DirectoryInfo folder, string prefix, List<ReadFault> faults)
    {
        try
        {
            return folder.GetFileSystemInfos();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            faults.Add(new ReadFault(prefix.Length == 0 ? "." : prefix.TrimEnd('/'), null,
                "the folder cannot be listed: " + e.Message.TrimEnd('.'), "check its permissions"));
            return [];
        }
    }
}
