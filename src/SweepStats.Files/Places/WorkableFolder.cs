namespace SweepStats.Files.Places;

/// <summary>
/// Lets the owner of a folder take away what lies in it, as long as it is held. A folder that stays has its own mode again.
/// </summary>
internal sealed class WorkableFolder : IDisposable
{
    private readonly string _folder;
    private readonly UnixFileMode? _mode;

    /// <param name="folder">The folder; one that is not there, or that a link leads to, is left alone.</param>
    public WorkableFolder(string folder)
    {
        _folder = folder;
        if (!OperatingSystem.IsWindows() && new DirectoryInfo(folder) is { Exists: true, LinkTarget: null })
        {
            _mode = File.GetUnixFileMode(folder);
            FolderRights.MakeWorkable(folder);
        }
    }

    /// <summary>Gives the folder its own mode back, where it is still there.</summary>
    public void Dispose()
    {
        if (!OperatingSystem.IsWindows() && _mode is { } mode && Directory.Exists(_folder))
        {
            File.SetUnixFileMode(_folder, mode);
        }
    }
}
