namespace SweepStats.Files.Places;

/// <summary>A link at a target that leads to nothing: neither a folder to replace nor room for a new one.</summary>
internal static class LostLink
{
    /// <summary>What is wrong with it; null where the target is no link, or one that leads somewhere.</summary>
    /// <param name="target">The target, as it was named.</param>
    /// <param name="elsewhere">Where else to write, such as "choose another folder with --out".</param>
    public static ReadFault? Of(string target, string elsewhere)
    {
        var link = new FileInfo(Path.TrimEndingDirectorySeparator(Path.GetFullPath(target)));
        if (link.LinkTarget is not { } to || Directory.Exists(link.FullName))
        {
            return null;
        }

        try
        {
            return link.ResolveLinkTarget(returnFinalTarget: true) is { Exists: true } ? null
                : new ReadFault(target, null, $"this is a link to '{to}', which is not there", $"make that folder, remove the link, or {elsewhere}");
        }
        catch (IOException)
        {
            return new ReadFault(target, null, "this is a link that leads round in a circle", $"remove the link, or {elsewhere}");
        }
    }
}
