namespace SweepStats.Files;

/// <summary>
/// Files that operating systems and office programs leave in folders on their own; nobody put them there and nobody misses them
/// in a message.
/// </summary>
internal static class OsLitter
{
    private static readonly string[] Names = ["thumbs.db", "ehthumbs.db", "desktop.ini"];

    /// <summary>Whether a file or folder of this name is passed over in silence: hidden, or litter.</summary>
    public static bool Is(string name) =>
        name.StartsWith('.') || name.StartsWith("~$", StringComparison.Ordinal) || Names.Contains(name.ToLowerInvariant());
}
