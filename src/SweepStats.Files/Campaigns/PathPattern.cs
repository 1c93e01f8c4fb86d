namespace SweepStats.Files.Campaigns;

/// <summary>
/// A pattern of paths within a campaign: <c>*</c> stands for any characters within a folder's or file's name, <c>**</c> for any
/// number of folders. Case does not count, since the same folder is kept on disks that tell cases apart and on such that do not.
/// It is held against paths that were found; it leads nowhere.
/// </summary>
internal sealed class PathPattern
{
    private const string AnyFolders = "**";

    private readonly string[] _parts;

    private PathPattern(string text) => _parts = text.Split('/');

    /// <summary>
    /// What is wrong with a pattern, such as that it could match nothing within a campaign; null for a good one.
    /// </summary>
    /// <param name="text">As written.</param>
    public static string? Problem(string text)
    {
        string[] parts = Plain(text).Split('/');
        return CampaignPath.IsRooted(Plain(text)) || parts.Contains("..") ? "leads out of the campaign"
            : parts.Contains("") || parts.Contains(".") ? "holds an empty folder"
            : parts[^1] == AnyFolders ? "ends with **, which stands for folders"
            : parts.Any(p => p.Contains(AnyFolders, StringComparison.Ordinal) && p != AnyFolders)
            ? "has ** beside other characters"
            : null;
    }

    /// <summary>A pattern without <see cref="Problem"/>.</summary>
    public static PathPattern Of(string text) => new(Plain(text));

    /// <summary>A pattern for one name in any folder.</summary>
    /// <param name="file">The name; a path's last part is taken.</param>
    public static string ForName(string file) => $"{AnyFolders}/{file[(file.LastIndexOf('/') + 1)..]}";

    /// <summary>Whether a path relative to the campaign, with '/', is one of those meant.</summary>
    public bool Matches(string path) => Match(_parts, path.Split('/'), Equals: Part, Any: AnyFolders);

    private static string Plain(string text) =>
        text.Replace('\\', '/') is var path && path.StartsWith("./", StringComparison.Ordinal) ? path[2..] : path;

    private static bool Part(string pattern, string name) =>
        Match([.. pattern.Select(c => c.ToString())], [.. name.Select(c => c.ToString())],
            Equals: (p, c) => string.Equals(p, c, StringComparison.OrdinalIgnoreCase), Any: "*");

    // The last wild card takes one more each time that the rest does not fit: no more than the product of both lengths.
    private static bool Match(string[] pattern, string[] items, Func<string, string, bool> Equals, string Any)
    {
        (int at, int item, int wild, int taken) = (0, 0, -1, 0);
        while (item < items.Length)
        {
            if (at < pattern.Length && pattern[at] == Any)
            {
                (wild, taken) = (at++, item);
            }
            else if (at < pattern.Length && Equals(pattern[at], items[item]))
            {
                (at, item) = (at + 1, item + 1);
            }
            else if (wild >= 0)
            {
                (at, item) = (wild + 1, ++taken);
            }
            else
            {
                return false;
            }
        }

        return pattern.AsSpan(at).IndexOfAnyExcept(Any) < 0;
    }
}
