using System.Text;
using SweepStats.Files;
using SweepStats.Files.Places;
using SweepStats.Files.Results;

namespace SweepStats.Cli.Look;

/// <summary>
/// Where the readings of --values may be written: a new file, or one that this option wrote before. Never a file that is read.
/// </summary>
internal static class ValuesPlace
{
    public const string Json = ".json";
    private const string Csv = ".csv";

    // What each kind begins with, whatever was looked at.
    private const string JsonStart = "[\n  {\n    \"file\": ";

    /// <summary>Whether the name's ending says how to write: .json or .csv, in small or capital letters.</summary>
    public static bool IsKnown(string target) =>
        IsJson(target) || Path.GetExtension(target).Equals(Csv, StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether the name's ending asks for JSON, in small or capital letters.</summary>
    public static bool IsJson(string target) => Path.GetExtension(target).Equals(Json, StringComparison.OrdinalIgnoreCase);

    /// <summary>Why nothing may be written there; null where it may.</summary>
    public static ReadFault? Refusal(string target, IEnumerable<string> inputs)
    {
        if (Directory.Exists(target))
        {
            return new ReadFault(target, null, "this is a folder", "name a file after --values");
        }

        if (LostLink.CircleAt(target) is { } circle)
        {
            return new ReadFault(target, null, circle, "remove the link, or name another file after --values");
        }

        string full = Behind(target);
        if (inputs.Any(input => Behind(input) == full))
        {
            return new ReadFault(target, null, "this is one of the files to look at", "name another file after --values");
        }

        return File.Exists(full) && !IsOurs(full)
            ? new ReadFault(target, null, "there is a file of this name that --values did not write",
                "name another file after --values, or move that one away")
            : null;
    }

    /// <summary>The file itself where the path is a link.</summary>
    public static string Behind(string path)
    {
        string full = Path.GetFullPath(path);
        var file = new FileInfo(full);
        return LostLink.CircleAt(full) is not null || file.LinkTarget is null ? full
            : file.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? full;
    }

    private static bool IsOurs(string path)
    {
        string start = IsJson(path) ? JsonStart : TraceValuesCsv.Header + "\n";
        byte[] expected = Encoding.UTF8.GetBytes(start);
        byte[] found = new byte[expected.Length];
        using FileStream file = File.OpenRead(path);
        return file.ReadAtLeast(found, found.Length, throwOnEndOfStream: false) == found.Length
            && found.AsSpan().SequenceEqual(expected);
    }
}
