namespace SweepStats.Statistics;

/// <summary>
/// What stands alone, made on several threads, each result to its own place: the number of threads changes nothing.
/// </summary>
public static class SideBySide
{
    /// <summary>The results, in their order.</summary>
    /// <param name="count">How many.</param>
    /// <param name="threads">Threads to use; fewer than one count as one.</param>
    /// <param name="make">Makes the result of a place, from 0; needs no other.</param>
    public static T[] Of<T>(int count, int threads, Func<int, T> make)
    {
        ArgumentNullException.ThrowIfNull(make);
        var made = new T[count];
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, threads) }, i => made[i] = make(i));
        return made;
    }
}
