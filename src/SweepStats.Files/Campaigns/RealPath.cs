namespace SweepStats.Files.Campaigns;

/// <summary>Where a path leads once every link on it is followed, those of folders too.</summary>
internal static class RealPath
{
    private const int MostLinks = 40;

    /// <summary>The path without links; null where the links lead round in a circle.</summary>
    /// <param name="path">A path; what is missing of it counts as no link.</param>
    public static string? Of(string path) => Of(Path.GetFullPath(path), MostLinks);

    private static string? Of(string full, int links)
    {
        string real = Path.GetPathRoot(full)!;
        string[] parts = full[real.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < parts.Length; i++)
        {
            string next = Path.Combine(real, parts[i]);
            if (new FileInfo(next).LinkTarget is { } target)
            {
                string led = Path.GetFullPath(Path.Combine([real, target, .. parts[(i + 1)..]]));
                return links == 0 ? null : Of(led, links - 1);
            }

            real = next;
        }

        return real;
    }
}
