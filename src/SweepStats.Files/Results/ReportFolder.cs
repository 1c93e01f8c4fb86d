using System.Collections.Concurrent;
using System.Collections.Immutable;
using SweepStats.Files.Campaigns;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>A report folder that appears whole or not at all: files are gathered beside the target and put in its place at the end.</summary>
/// <remarks>
/// An earlier report at the target is replaced: a folder with a summary.json of this program and nothing but the files it lists, unchanged.
/// Any other folder or file is not touched.
/// </remarks>
public sealed class ReportFolder : IDisposable
{
    private readonly string _shown;
    private readonly string _target;
    private readonly string _stage;
    private readonly ConcurrentDictionary<string, string> _written = new(StringComparer.Ordinal);
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

        _shown = target;
        _target = Behind(Path.TrimEndingDirectorySeparator(Path.GetFullPath(target)));
        string parent = Path.GetDirectoryName(_target)!;
        _stage = Path.Combine(parent, $".{Path.GetFileName(_target)}.{Guid.NewGuid():N}.part");
        try
        {
            Directory.CreateDirectory(parent);
            Directory.CreateDirectory(_stage);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // The system's own message names the hidden folder beside the target, which nobody asked for.
            throw new IOException($"{target}: the report cannot be written, since nothing can be created in '{parent}'; choose another folder with --out, or see whether you may write there and the disk has room", e);
        }
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

        return Directory.Exists(full) ? EarlierReport.Objection(full, target) : null;
    }

    /// <summary>Creates a file of the report; several may be written at the same time.</summary>
    /// <param name="path">Its path within the report, with '/' between folders.</param>
    /// <exception cref="ArgumentException">The path leads out of the report.</exception>
    public Stream Create(string path)
    {
        string full = Gathered(path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        return new HashedFile(full, hash => _written[Path.GetRelativePath(_stage, full).Replace('\\', '/')] = hash);
    }

    /// <summary>Where a file lies until the report is put in its place.</summary>
    /// <param name="path">Its path within the report, with '/' between folders.</param>
    /// <exception cref="ArgumentException">The path leads out of the report.</exception>
    public string Gathered(string path)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        string full = Path.GetFullPath(Path.Combine(_stage, path));
        return full.StartsWith(_stage + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            ? full
            : throw new ArgumentException($"'{path}' leads out of the report.", nameof(path));
    }

    /// <summary>The files created so far, with their hashes, in natural order. All streams must be closed.</summary>
    public ImmutableArray<InputFile> Written() =>
        [.. _written.Select(file => new InputFile(file.Key, file.Value)).OrderBy(f => f.Path, NaturalOrder.Instance)];

    /// <summary>Puts the report in its place. All streams must be closed.</summary>
    /// <exception cref="IOException">The folders cannot be exchanged; the earlier report is then back in its place.</exception>
    public void Commit()
    {
        ObjectDisposedException.ThrowIf(_committed, this);
        try
        {
            Exchange();
        }
        catch (UnauthorizedAccessException e)
        {
            throw Unexchanged(e);
        }
    }

    /// <summary>Removes what was gathered, unless it was committed.</summary>
    public void Dispose()
    {
        if (!_committed && Directory.Exists(_stage))
        {
            Directory.Delete(_stage, recursive: true);
        }
    }

    private void Exchange()
    {
        if (!Directory.Exists(_target))
        {
            MoveIn();
            _committed = true;
            return;
        }

        // The run took its time: somebody may have put a file there meanwhile.
        if (EarlierReport.Objection(_target, _shown) is { } fault)
        {
            throw new IOException(fault.ToString());
        }

        string old = _stage + ".old";
        Directory.Move(_target, old);
        try
        {
            Directory.Move(_stage, _target);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Directory.Move(old, _target);
            throw Unexchanged(e);
        }

        _committed = true;
        if (!EarlierReport.Remove(old, _target))
        {
            throw new IOException($"{_shown}: the report is written, but in the earlier one a file was changed or added meanwhile; it lies in '{old}'");
        }
    }

    private void MoveIn()
    {
        try
        {
            Directory.Move(_stage, _target);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Unexchanged(e);
        }
    }

    private IOException Unexchanged(Exception e) =>
        new($"{_shown}: the report cannot be put in its place; see whether a program holds an earlier one open and whether you may write there, or choose another folder with --out", e);

    // Where the target is a link, the folder behind it is exchanged and the link stays.
    private static string Behind(string target) =>
        Directory.Exists(target) && new DirectoryInfo(target).ResolveLinkTarget(returnFinalTarget: true) is { } folder ? Path.TrimEndingDirectorySeparator(folder.FullName) : target;
}
