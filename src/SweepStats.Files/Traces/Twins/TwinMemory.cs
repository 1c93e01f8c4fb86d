using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Twins;

/// <summary>
/// Keeps what was found in a few files of a campaign, so that those that differ from one of them in nothing but the levels need
/// not be understood anew. Which files are kept does not change what is read. Threads may share it.
/// </summary>
internal sealed class TwinMemory
{
    private const int MostKept = 8;

    // Files that are all different are not worth the proof.
    private const int MostTried = 24;

    // Some ten million bytes: what is kept stays in memory.
    private const int MostLines = 400_000;

    private readonly Lock _lock = new();
    private volatile Twin[] _kept = [];
    private int _tried;

    /// <summary>The reading of a file that is the twin of one kept; null where it is none.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="name">Its name.</param>
    /// <param name="options">What is known beside its content.</param>
    public TraceReading? Read(FileBytes bytes, string name, TraceReadOptions options)
    {
        foreach (Twin twin in _kept)
        {
            if (twin.Read(bytes, name, options) is { } reading)
            {
                return reading;
            }
        }

        return null;
    }

    /// <summary>Keeps a file that was read, where others may be its twins.</summary>
    /// <param name="text">The file.</param>
    /// <param name="reading">What was found in it.</param>
    /// <param name="options">What was known beside it.</param>
    public void Keep(TraceText text, TraceReading reading, TraceReadOptions options)
    {
        if (_kept.Length >= MostKept || text.LineCount > MostLines || Interlocked.Increment(ref _tried) > MostTried
            || TwinProof.Of(text, reading, options) is not { } twin)
        {
            return;
        }

        lock (_lock)
        {
            _kept = [.. _kept, twin];
        }
    }
}
