namespace SweepStats.Files.Places;

/// <summary>A file that appears whole or not at all: it is written beside its place and put there at the end.</summary>
public sealed class GatheredFile : IDisposable
{
    private readonly MadeFolders _made = new();
    private readonly Interruption _interruption;
    private readonly string _target;
    private RunLock? _lock;
    private string? _stage;
    private bool _left;
    private bool _committed;

    /// <summary>Starts a file, after sweeping away what killed runs left of theirs. Folders that are missing are made.</summary>
    /// <param name="target">Where it will be.</param>
    /// <exception cref="IOException">Nothing can be created there.</exception>
    public GatheredFile(string target)
    {
        _target = Path.GetFullPath(target);
        _interruption = new Interruption(Leave);
        try
        {
            _interruption.Step(Start);
        }
        catch
        {
            Dispose();
            throw;
        }
    }

    /// <summary>Where it is written to.</summary>
    public Stream Content { get; private set; } = Stream.Null;

    /// <summary>What a signal does, for tests.</summary>
    internal Interruption Interruption => _interruption;

    private static Predecessor Nothing =>
        new() { What = "", Elsewhere = "", Objection = _ => null, Own = _ => [], Remove = (_, _) => false };

    /// <summary>Closes the file and has the disk hold it: nothing but its place is missing then.</summary>
    public void Finish()
    {
        Content.Dispose();
        DiskFlush.OfFile(_stage!);
    }

    /// <summary>Puts it in its place.</summary>
    /// <param name="overwrite">Whether a file may stand there.</param>
    /// <exception cref="IOException">It cannot be put there.</exception>
    public void Commit(bool overwrite)
    {
        Finish();
        _interruption.Step(() => PutInPlace(overwrite));
    }

    /// <summary>Puts two files in their places, where none may stand: both, or neither.</summary>
    /// <exception cref="IOException">One of them cannot be put there; the other is not there then either.</exception>
    public static void CommitBoth(GatheredFile one, GatheredFile other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        one.Finish();
        other.Finish();
        Interruption.Step(one._interruption, other._interruption, () =>
        {
            one.PutInPlace(overwrite: false);
            try
            {
                other.PutInPlace(overwrite: false);
            }
            catch
            {
                one.TakeBack();
                throw;
            }
        });
    }

    /// <summary>Whether an error is one of writing this file.</summary>
    public bool IsMeant(IOException e) => _stage is not null && e.Message.Contains(_stage, StringComparison.Ordinal);

    /// <summary>An error of writing the file, as a person who named it understands it.</summary>
    /// <param name="e">What the system said.</param>
    /// <param name="shown">The file, as it was named.</param>
    /// <param name="what">What is written, such as "the readings".</param>
    /// <param name="elsewhere">Where else to write it.</param>
    public static IOException Told(Exception e, string shown, string what, string elsewhere) =>
        WriteFault.Of(e, shown, what, elsewhere);

    /// <summary>Removes what was written, unless it was committed.</summary>
    public void Dispose()
    {
        try
        {
            Content.Dispose();
        }
        catch (IOException)
        {
            // The disk has no room for what is thrown away.
        }

        _interruption.Step(Leave);
        _interruption.Dispose();
    }

    private void Start()
    {
        string folder = Path.GetDirectoryName(_target)!;
        var name = new HiddenName(Path.GetFileName(_target));
        _made.Make(folder);
        _lock = RunLock.Take(folder, name);
        new Leftovers(folder, name).Sweep(_target, _lock, Nothing);
        _stage = Path.Combine(folder, name.Of(_lock.Run, HiddenName.Part));
        // A signal removes it while the run still writes.
        Content = new FileStream(_stage, FileMode.CreateNew, FileAccess.Write, FileShare.Read | FileShare.Delete);
    }

    private void PutInPlace(bool overwrite)
    {
        File.Move(_stage!, _target, overwrite);
        _committed = true;
    }

    private void TakeBack()
    {
        _committed = false;
        File.Delete(_target);
    }

    private void Leave()
    {
        if (_left)
        {
            return;
        }

        _left = true;
        try
        {
            if (_stage is not null)
            {
                File.Delete(_stage);
            }
        }
        finally
        {
            _lock?.Dispose();
            if (!_committed)
            {
                _made.Undo();
            }
        }
    }
}
