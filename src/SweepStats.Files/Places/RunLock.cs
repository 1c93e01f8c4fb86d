namespace SweepStats.Files.Places;

/// <summary>A file that a run holds open as long as it lives. The system lets go of it whatever way the run ends.</summary>
internal sealed class RunLock : IDisposable
{
    private const int MostTries = 20;

    // EWOULDBLOCK of Linux and of macOS; ERROR_SHARING_VIOLATION of Windows.
    private static readonly int[] HeldByOthers = [11, 35, unchecked((int)0x80070020)];

    private readonly string _file;
    private readonly FileStream _held;

    private RunLock(string file, FileStream held) => (_file, _held) = (file, held);

    /// <summary>Whether other runs can see that the file is held; some network disks do not tell.</summary>
    public bool IsSeen => Taken(_file) is null;

    /// <summary>Number of the run that holds it.</summary>
    public required string Run { get; init; }

    /// <summary>Takes a new one.</summary>
    /// <param name="folder">Where it lies.</param>
    /// <param name="name">How it is named.</param>
    /// <exception cref="IOException">Nothing can be created there.</exception>
    public static RunLock Take(string folder, HiddenName name) => Take(folder, name, Made);

    /// <summary>The same with another way to make the file and hold it.</summary>
    internal static RunLock Take(string folder, HiddenName name, Func<string, FileStream> made)
    {
        for (int tries = 1; tries <= MostTries; tries++)
        {
            if (TakenUnlessSwept(folder, name, made) is { } taken)
            {
                return taken;
            }
        }

        throw new IOException($"other runs sweep '{folder}' all the time");
    }

    /// <summary>Takes the one that a dead run left; null where its run is alive.</summary>
    public static RunLock? OfDead(string folder, HiddenName name, string run)
    {
        string file = Path.Combine(folder, name.Of(run, HiddenName.Lock));
        return Taken(file) is { } held ? new RunLock(file, held) { Run = run } : null;
    }

    /// <summary>Whether a run is alive, as far as the disk shows.</summary>
    public static bool IsAlive(string folder, HiddenName name, string run)
    {
        string file = Path.Combine(folder, name.Of(run, HiddenName.Lock));
        using FileStream? held = Taken(file);
        return held is null && File.Exists(file);
    }

    /// <summary>Removes the file and lets go of it, held as long as the system allows.</summary>
    public void Dispose()
    {
        // While it is still held, so that nobody takes it up between.
        if (!OperatingSystem.IsWindows())
        {
            File.Delete(_file);
        }

        _held.Dispose();
        File.Delete(_file);
    }

    // Between its creation and its being held, another run may take it for a dead one's:
    // it holds it then, or has removed it already.
    private static RunLock? TakenUnlessSwept(string folder, HiddenName name, Func<string, FileStream> made)
    {
        string run = HiddenName.NewRun();
        string file = Path.Combine(folder, name.Of(run, HiddenName.Lock));
        try
        {
            FileStream held = made(file);
            if (File.Exists(file))
            {
                return new RunLock(file, held) { Run = run };
            }

            held.Dispose();
            return null;
        }
        catch (IOException e) when (HeldByOthers.Contains(e.HResult))
        {
            return null;
        }
    }

    private static FileStream Made(string file) => new(file, FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);

    private static FileStream? Taken(string file)
    {
        try
        {
            return new FileStream(file, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
