namespace SweepStats.Files.Results;

/// <summary>A report folder that appears whole or not at all: files are gathered beside the target and put in its place at the end.</summary>
/// <remarks>An earlier report at the target is replaced; any other folder or file is not touched.</remarks>
public sealed class ReportFolder : IDisposable
{
    private readonly string _target;
    private readonly string _stage;
    private bool _committed;

    /// <summary>Starts a report.</summary>
    /// <param name="target">Where it will be.</param>
    /// <exception cref="InvalidOperationException">The target may not be replaced; see <see cref="Refusal"/>.</exception>
    /// <exception cref="IOException">The folder beside the target cannot be made.</exception>
    public ReportFolder(string target)
    {
        if (Refusal(target) is { } fault)
        {
            throw new InvalidOperationException(fault.ToString());
        }

        _target = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        string parent = Path.GetDirectoryName(_target)!;
        Directory.CreateDirectory(parent);
        _stage = Path.Combine(parent, $".{Path.GetFileName(_target)}.{Guid.NewGuid():N}.part");
        Directory.CreateDirectory(_stage);
    }

    /// <summary>Why a report may not be written to a place; null where it may.</summary>
    public static ReadFault? Refusal(string target)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(target));
        if (Path.GetDirectoryName(full) is null)
        {
            return new ReadFault(target, null, "a report cannot take the place of a whole drive", "choose a folder with --out");
        }

        if (File.Exists(full))
        {
            return new ReadFault(target, null, "there is a file of this name", "choose another folder with --out");
        }

        bool earlier = !Directory.Exists(full) || File.Exists(Path.Combine(full, SummaryJson.FileName)) || !Directory.EnumerateFileSystemEntries(full).Any();
        return earlier
            ? null
            : new ReadFault(target, null, $"the folder holds something other than an earlier report (it has no {SummaryJson.FileName})", "choose another folder with --out");
    }

    /// <summary>Creates a file of the report.</summary>
    /// <param name="path">Its path within the report, with '/' between folders.</param>
    /// <exception cref="ArgumentException">The path leads out of the report.</exception>
    public Stream Create(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        string full = Path.GetFullPath(Path.Combine(_stage, path));
        if (!full.StartsWith(_stage + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            throw new ArgumentException($"'{path}' leads out of the report.", nameof(path));
        }

        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        return File.Create(full);
    }

    /// <summary>Puts the report in its place. All streams must be closed.</summary>
    /// <exception cref="IOException">The folders cannot be exchanged; the earlier report is then back in its place.</exception>
    public void Commit()
    {
        ObjectDisposedException.ThrowIf(_committed, this);
        if (!Directory.Exists(_target))
        {
            Directory.Move(_stage, _target);
            _committed = true;
            return;
        }

        string old = _stage + ".old";
        Directory.Move(_target, old);
        try
        {
            Directory.Move(_stage, _target);
        }
        catch (IOException)
        {
            Directory.Move(old, _target);
            throw;
        }

        _committed = true;
        Directory.Delete(old, recursive: true);
    }

    /// <summary>Removes what was gathered, unless it was committed.</summary>
    public void Dispose()
    {
        if (!_committed && Directory.Exists(_stage))
        {
            Directory.Delete(_stage, recursive: true);
        }
    }
}
