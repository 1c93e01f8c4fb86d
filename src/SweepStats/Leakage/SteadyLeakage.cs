namespace SweepStats.Leakage;

/// <summary>
/// What reaches the receiver on another way than through the specimen, steadily, from sweep to sweep. Immutable.
/// </summary>
/// <remarks>It adds to the specimen's signal as a voltage whose phase nobody knows.</remarks>
public sealed record SteadyLeakage
{
    // Nulls of a sum of ways move when the set-up is touched: no level is taken to be lower than what its neighbours have in the
    // mean.
    private const int Neighbours = 2;

    /// <summary>What shows it.</summary>
    public required LeakageSource Source { get; init; }

    /// <summary>Its level at each frequency in dB on the scale of the sweeps; −∞ where none shows.</summary>
    public required ImmutableArray<double> LevelDb { get; init; }

    /// <summary>
    /// Root mean square level in dB of what may be left of it after it was subtracted from reference and covered sweeps, as noise
    /// that all of them share; empty where it was not subtracted.
    /// </summary>
    public ImmutableArray<double> RemainderDb { get; init; } = [];

    /// <summary>How high it may be at each frequency, also where none shows; empty where that is not known.</summary>
    public ImmutableArray<LeakageLevel> MayBe { get; init; } = [];

    /// <summary>It was subtracted from reference and covered sweeps.</summary>
    public bool Subtracted => !RemainderDb.IsEmpty;

    /// <summary>Whether it shows anywhere.</summary>
    public bool Anywhere => LevelDb.Any(double.IsFinite);

    /// <summary>Levels that are nowhere below the mean power of the neighbouring frequencies.</summary>
    /// <param name="levels">Levels in dB; −∞ where none shows, and there it stays.</param>
    internal static ImmutableArray<double> Filled(IReadOnlyList<double> levels)
    {
        double[] around = AroundDb(levels);
        return [.. levels.Select((level, f) => double.IsFinite(level) ? Math.Max(level, around[f]) : level)];
    }

    /// <summary>The same of levels that chance may hide.</summary>
    internal static ImmutableArray<LeakageLevel> Filled(IReadOnlyList<LeakageLevel> levels)
    {
        double[] around = AroundDb([.. levels.Select(l => l.EstimateDb)]);
        return [.. levels.Select((level, f) => level with { EstimateDb = Math.Max(level.EstimateDb, around[f]) })];
    }

    // Mean power of each frequency and its neighbours, in dB.
    private static double[] AroundDb(IReadOnlyList<double> levels)
    {
        double[] power = [.. levels.Select(level => Math.Pow(10, level / 10))];
        double Around(int f)
        {
            int first = Math.Max(0, f - Neighbours), end = Math.Min(power.Length, f + Neighbours + 1);
            return 10 * Math.Log10(power.AsSpan(first, end - first).ToArray().Average());
        }

        return [.. Enumerable.Range(0, power.Length).Select(Around)];
    }
}
