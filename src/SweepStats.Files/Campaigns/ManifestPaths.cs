using SweepStats.Files.Traces;

namespace SweepStats.Files.Campaigns;

/// <summary>Turns the paths of sweeps.csv into paths within the campaign, and refuses those that lead out of it.</summary>
internal sealed class ManifestPaths(string root, FaultList faults)
{
    private readonly Dictionary<string, bool> _out = new(StringComparer.Ordinal);

    /// <summary>
    /// The path relative to the campaign with '/' between folders; null, with the reason among the faults, where it is none.
    /// </summary>
    public string? Inside(string text, int line)
    {
        string path = text.Replace('\\', '/');
        if (path.Length == 0 || path.Any(char.IsControl))
        {
            faults.Add(line, "the path of the file is empty or holds control characters",
                "write it relative to the campaign, such as floor/f01.csv");
            return null;
        }

        if (CampaignPath.Absolute(root, path) is { } inside)
        {
            faults.Add(line, $"'{text}' is an absolute path", $"write the path relative to campaign.toml: {inside}");
            return null;
        }

        string full = Path.GetFullPath(Path.Combine(root, path));
        if (CampaignPath.IsRooted(path)
            || !full.StartsWith(root.TrimEnd('/', '\\') + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            faults.Add(line, $"'{text}' leads out of the campaign",
                "put the file into the campaign and write its path relative to it");
            return null;
        }

        string relative = Path.GetRelativePath(root, full).Replace('\\', '/');
        return IsTrace(relative, text, line) ? relative : null;
    }

    private bool IsTrace(string relative, string text, int line)
    {
        if (!TraceFile.HasTraceExtension(relative))
        {
            faults.Add(line, $"the extension of '{text}' is not that of a trace file",
                $"use {string.Join(' ', TraceFile.Extensions)}");
            return false;
        }

        bool leadsOut = LeadsOut(relative);
        if (leadsOut)
        {
            faults.Add(line, $"'{text}' leads out of the campaign: a folder on its way is a link",
                "put the folder itself into the campaign");
        }

        return !leadsOut;
    }

    // Asked once for each folder; a file that is a link itself is turned away where it is read.
    private bool LeadsOut(string relative)
    {
        string folder = Path.GetDirectoryName(relative)!;
        if (folder.Length == 0)
        {
            return false;
        }

        if (!_out.TryGetValue(folder, out bool leads))
        {
            leads = !FolderWalk.LiesWithin(root, Path.Combine(root, folder));
            _out.Add(folder, leads);
        }

        return leads;
    }
}
