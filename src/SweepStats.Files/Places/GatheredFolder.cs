namespace SweepStats.Files.Places;

/// <summary>
/// A folder that appears whole or not at all: its files are gathered out of sight and put in their place at the end.
/// </summary>
/// <remarks>
/// Beside the target where that can be: then old and new are exchanged in one step, and whatever ends the run, one of them stands
/// whole (on systems without such a step there are two, and the next run puts back what one was killed between). Within the
/// target where it is a mount point, where nothing may be created beside it, or where its owner could not be kept: then file by
/// file, the file that says what it is last, and the next run knows the files of both.
/// </remarks>
internal sealed class GatheredFolder : IDisposable
{
    private readonly string _shown;
    private readonly string _target;
    private readonly Predecessor _predecessor;
    private readonly Interruption _interruption;
    private GatheringPlace? _place;
    private bool _committed;

    /// <summary>Starts a folder, after sweeping away what killed runs left of theirs.</summary>
    /// <param name="target">Where it will be.</param>
    /// <param name="predecessor">What may stand there.</param>
    /// <exception cref="IOException">Nothing can be created there.</exception>
    public GatheredFolder(string target, Predecessor predecessor)
    {
        _shown = target;
        _predecessor = predecessor;
        _target = Behind(Path.TrimEndingDirectorySeparator(Path.GetFullPath(target)));
        _interruption = new Interruption(Leave);
        try
        {
            _interruption.Step(() => _place = GatheringPlace.For(_target, predecessor));
        }
        catch (Exception e)
        {
            _interruption.Dispose();
            if (e is not (IOException or UnauthorizedAccessException))
            {
                throw;
            }

            // The system's own message names the hidden folder beside the target, which nobody asked for.
            throw new IOException($"{target}: {predecessor.What} cannot be written, since nothing can be created in "
                + $"'{Path.GetDirectoryName(_target)}'; "
                + $"{predecessor.Elsewhere}, or see whether you may write there and the disk has room", e);
        }
    }

    /// <summary>Where the files lie until then.</summary>
    public string Stage => _place!.Stage;

    /// <summary>Waits for ever once the run is about to end: what it still writes would be left behind.</summary>
    public void StopIfEnding() => _interruption.StopIfEnding();

    /// <summary>An error of writing a file, as a person who named the target understands it.</summary>
    public IOException Told(Exception e) => WriteFault.Of(e, _shown, _predecessor.What, _predecessor.Elsewhere);

    /// <summary>Puts the files in their place, after the disk holds them. All streams must be closed.</summary>
    /// <param name="waits">Told in a sentence where another run has to end its exchange first.</param>
    /// <exception cref="IOException">They cannot be put there; what stood there before stands there still.</exception>
    public void Commit(Action<string>? waits = null)
    {
        ObjectDisposedException.ThrowIf(_committed, this);
        try
        {
            DiskFlush.Of(Stage);
            // Not within the step, which a signal waits for.
            using IDisposable? hold = _place!.IsWithin ? FolderHold.Of(_target, () => waits?.Invoke(Waiting)) : null;
            _interruption.Step(Exchange);
        }
        catch (Exception e) when (!_committed && e is IOException or UnauthorizedAccessException && e is not RefusedException)
        {
            throw Unexchanged(e);
        }
    }

    /// <summary>Removes what was gathered, unless it was committed.</summary>
    public void Dispose()
    {
        _interruption.Step(Leave);
        _interruption.Dispose();
    }

    private string Waiting => $"{_shown}: another run is putting its files there; waiting for it, Ctrl-C gives up";

    private void Exchange()
    {
        FolderSwap swap = new(Stage, _target, _predecessor);
        if (_place!.IsWithin)
        {
            swap.FileByFile();
            _committed = true;
            _place.SweepWithin();
            return;
        }

        swap.InOneStep(() => _committed = true);
        UnixCalls.Flush(Path.GetDirectoryName(_target)!);
        if (swap.Replaced is { } old && !IsRemoved(old))
        {
            throw new IOException($"{_shown}: {_predecessor.What} is written, but not all of the earlier one could be removed, "
                + "since a file in it was changed or added meanwhile, or may not be removed; look for it in "
                + $"'{KeptFolder.Of(old, _target)}'");
        }
    }

    private bool IsRemoved(string old)
    {
        try
        {
            return _predecessor.Remove(old, _target);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private void Leave() => _place?.Leave(_committed);

    private IOException Unexchanged(Exception e) =>
        new($"{_shown}: {_predecessor.What} cannot be put in its place; see whether a program holds an earlier one open and "
            + $"whether you may write there, or {_predecessor.Elsewhere}", e);

    // Where the target is a link, the folder behind it is exchanged and the link stays.
    private static string Behind(string target) =>
        Directory.Exists(target) && new DirectoryInfo(target).ResolveLinkTarget(returnFinalTarget: true) is { } folder
            ? Path.TrimEndingDirectorySeparator(folder.FullName) : target;
}
