namespace SweepStats.Files.Places;

/// <summary>A link that leads to nothing: no folder to read or to replace, and no room for a new one.</summary>
public static class LostLink
{
    private const string Circle = "this is a link that leads round in a circle",
        CircleOnTheWay = "a link on the way there leads round in a circle";

    // ELOOP of Linux and of macOS.
    private static readonly int[] TooManyLinks = [40, 62];

    /// <summary>Why nothing can be written there; null where the target is no link, or one that leads somewhere.</summary>
    /// <param name="target">The target, as it was named.</param>
    /// <param name="elsewhere">Where else to write, such as "choose another folder with --out".</param>
    public static ReadFault? Of(string target, string elsewhere) => Problem(target) is { } problem
        ? new ReadFault(target, null, problem,
            $"{(problem == Circle ? "" : "make that folder, ")}remove the link, or {elsewhere}")
        : null;

    /// <summary>What is wrong with a path that leads round in a circle, itself or on its way; null where it does not.</summary>
    public static string? CircleAt(string path) => CircleAt(new FileInfo(path));

    /// <summary>The same of a file; what the system says of it is then known.</summary>
    internal static string? CircleAt(FileInfo file)
    {
        try
        {
            return file.Attributes.HasFlag(FileAttributes.ReparsePoint) && file.LinkTarget is not null
                && Problem(file.FullName) == Circle ? Circle : null;
        }
        catch (IOException e) when (TooManyLinks.Contains(e.HResult))
        {
            return CircleOnTheWay;
        }
    }

    /// <summary>What is wrong with it; null where a path is no link, or one that leads somewhere.</summary>
    public static string? Problem(string path)
    {
        var link = new FileInfo(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path)));
        if (link.LinkTarget is not { } to || Directory.Exists(link.FullName))
        {
            return null;
        }

        try
        {
            return link.ResolveLinkTarget(returnFinalTarget: true) is { Exists: true } ? null
                : $"this is a link to '{to}', which is not there";
        }
        catch (IOException)
        {
            return Circle;
        }
    }
}
