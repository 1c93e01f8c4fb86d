namespace SweepStats.Files.Campaigns;

/// <summary>Paths that a campaign names, which are relative to its folder.</summary>
internal static class CampaignPath
{
    /// <summary>
    /// Whether a path starts at the root of a disk. A colon within a name is legal, but for systems that part drives and streams
    /// with it.
    /// </summary>
    /// <param name="path">As written, with '/'.</param>
    public static bool IsRooted(string path) =>
        Path.IsPathRooted(path) || path is [_, ':', '/', ..] || (OperatingSystem.IsWindows() && path.Contains(':'));

    /// <summary>What to write instead of an absolute path into the campaign; null for any other path.</summary>
    /// <param name="root">The campaign's folder.</param>
    /// <param name="path">As written.</param>
    public static string? Absolute(string root, string path)
    {
        string inner = Path.TrimEndingDirectorySeparator(root) + Path.DirectorySeparatorChar;
        string full = Path.GetFullPath(Path.Combine(root, path));
        return Path.IsPathRooted(path) && full.StartsWith(inner, StringComparison.Ordinal)
            ? full[inner.Length..].Replace('\\', '/') : null;
    }
}
