namespace SweepStats.Storage;

/// <summary>
/// Keeps the rows of numbers of a campaign: in memory while there is room, beyond that in a file that has no name.
/// </summary>
/// <remarks>
/// A hundred specimens fit into memory whole. Thousands do not have to: what is asked for again is read again, which costs less
/// than to work it out anew. What is kept does not depend on where it lies. May be used from many threads.
/// </remarks>
public sealed class RowStore
{
    /// <summary>Room in memory unless stated: a hundred specimens of twenty sweeps, with their results, fit into it.</summary>
    public const long UsualRoom = 48L << 20;

    private readonly long _room;
    private readonly Lazy<ScratchFile> _file;
    private long _inMemory;

    /// <param name="roomBytes">Bytes of rows to hold in memory.</param>
    /// <param name="folder">Where the file lies; in the folder for temporary files unless given.</param>
    public RowStore(long roomBytes = UsualRoom, string? folder = null)
    {
        _room = roomBytes;
        _file = new Lazy<ScratchFile>(() => ScratchFile.In(folder ?? Path.GetTempPath()));
    }

    /// <summary>Holds all rows in memory.</summary>
    public static RowStore InMemory { get; } = new(long.MaxValue);

    /// <summary>Keeps rows of one length; they must not be changed afterwards.</summary>
    /// <exception cref="ScratchFileException">The folder for temporary files has no room for them.</exception>
    internal KeptRows Keep(params double[][] rows)
    {
        long bytes = rows.Sum(r => (long)r.Length) * sizeof(double);
        return Interlocked.Add(ref _inMemory, bytes) <= _room ? new KeptRows(rows) : new KeptRows(rows, _file.Value);
    }
}
