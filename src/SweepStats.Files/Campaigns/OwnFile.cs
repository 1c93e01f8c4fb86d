using SweepStats.Files.Places;

namespace SweepStats.Files.Campaigns;

/// <summary>
/// Whether campaign.toml or sweeps.csv is a file of the campaign: what a link out of it leads to must not show up in a message.
/// </summary>
internal static class OwnFile
{
    /// <summary>Why it is not read; null where it is, or is not there.</summary>
    /// <param name="root">The campaign's folder.</param>
    /// <param name="name">Its name.</param>
    public static ReadFault? Refusal(string root, string name)
    {
        string path = Path.Combine(root, name);
        if (Directory.Exists(path))
        {
            return new ReadFault(name, null, "this is a folder, not a file", "rename the folder");
        }

        if (new FileInfo(path).LinkTarget is not null && !FolderWalk.LiesWithin(root, path))
        {
            return new ReadFault(name, null, "the file is a link that leads out of the campaign",
                "put the file itself into the campaign");
        }

        return File.Exists(path) && UnixCalls.IsRegularFile(path) == false
            ? new ReadFault(name, null, "this is not a regular file", "remove it, and write the file anew") : null;
    }
}
