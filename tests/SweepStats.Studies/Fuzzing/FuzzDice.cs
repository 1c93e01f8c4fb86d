namespace SweepStats.Studies.Fuzzing;

/// <summary>
/// Random numbers that depend on nothing but a seed and a file's number, so that any file of a run can be made again alone.
/// </summary>
/// <remarks>SplitMix64 (Steele, Lea, Flood 2014): cheap to start, which a generator per file must be.</remarks>
internal sealed class FuzzDice(long seed, long file)
{
    private ulong _state =
        unchecked(((ulong)seed * 0xD1342543DE82EF95UL) + ((ulong)file * 0x9E3779B97F4A7C15UL) + 0x632BE59BD9B4E019UL);

    /// <summary>A whole number from 0 to below the limit; 0 for a limit of 0.</summary>
    public int Below(int limit) => limit <= 1 ? 0 : (int)(Next() % (ulong)limit);

    /// <summary>Whether one throw in so many came.</summary>
    public bool OneIn(int throws) => Below(throws) == 0;

    /// <summary>One of several.</summary>
    public T Of<T>(IReadOnlyList<T> items) => items[Below(items.Count)];

    private ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15UL;
            ulong z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}
