using SweepStats.Statistics;

namespace SweepStats.Planning;

/// <summary>Numbers of sweeps with the half-width in dB that they give in the middle of all campaigns.</summary>
/// <param name="Numbers">Sweeps taken.</param>
/// <param name="HalfWidthDb">Half-width to be expected.</param>
public readonly record struct ExpectedWidth(SweepNumbers Numbers, double HalfWidthDb);

/// <summary>Finds the fewest sweeps that give a wanted half-width.</summary>
/// <param name="basis">What is known of the set-up.</param>
/// <param name="confidence">Two-sided level.</param>
/// <param name="referenceSweeps">Reference sweeps; null takes as many as covered sweeps.</param>
public sealed class FewestSweeps(PlanBasis basis, Confidence confidence, int? referenceSweeps)
{
    /// <summary>Most placements, or sweeps of a single one, that are thought of.</summary>
    public const int Most = 200;

    /// <summary>Most covered sweeps in all that are thought of: nobody takes more, and drawing them would take minutes.</summary>
    public const int MostCovered = 2000;

    // Two repeats show their scatter on one degree of freedom: one campaign in ten would be more than twice as wide as the middle
    // one.
    private const int Least = 3;

    /// <summary>Half-widths reckoned in full so far, which is where a search takes its time.</summary>
    internal int Reckoned { get; private set; }

    /// <summary>Numbers with their reference sweeps and what they give.</summary>
    public ExpectedWidth Expect(int placements, int sweepsEach) => Expect(Numbers(placements, sweepsEach));

    /// <summary>
    /// Fewest placements of so many sweeps each, at least three; null where even 200, or 2000 covered sweeps in all, do not give
    /// it.
    /// </summary>
    public ExpectedWidth? Placements(double halfWidthDb, int sweepsEach) =>
        Fewest(halfWidthDb,
            Enumerable.Range(Least, Math.Max(0, MostBeside(sweepsEach) - Least + 1)).Select(n => Numbers(n, sweepsEach)));

    /// <summary>
    /// Fewest sweeps of each of so many placements; null where even 200, or 2000 covered sweeps in all, do not give it.
    /// </summary>
    /// <remarks>
    /// Placements go on differing however often each is swept, so the half-width may rise again: every number is tried.
    /// </remarks>
    public ExpectedWidth? SweepsEach(double halfWidthDb, int placements) => placements == 1 ? Sweeps(halfWidthDb)
        : Fewest(halfWidthDb, Enumerable.Range(1, MostBeside(placements)).Select(m => Numbers(placements, m)));

    /// <summary>Fewest sweeps of a specimen that stays where it is, at least three; null where even 200 do not give it.</summary>
    public ExpectedWidth? Sweeps(double halfWidthDb) =>
        Fewest(halfWidthDb, Enumerable.Range(Least, Most - Least + 1).Select(m => Numbers(1, m)));

    private static int MostBeside(int number) => Math.Min(Most, MostCovered / Math.Max(1, number));

    private SweepNumbers Numbers(int placements, int sweepsEach) =>
        new(placements, sweepsEach, referenceSweeps ?? placements * sweepsEach);

    // Every number is tried: where few reference sweeps rule, more repeats lend the result fewer degrees of freedom, and the
    // half-width rises again.
    private ExpectedWidth? Fewest(double halfWidthDb, IEnumerable<SweepNumbers> tried) => tried
        .Where(numbers => !HalfWidthForecast.IsFarAbove(halfWidthDb, basis, numbers, confidence))
        .Select(Expect)
        .Where(w => w.HalfWidthDb <= halfWidthDb).Select(w => (ExpectedWidth?)w).FirstOrDefault();

    private ExpectedWidth Expect(SweepNumbers numbers)
    {
        Reckoned++;
        return new ExpectedWidth(numbers, HalfWidthForecast.Db(basis, numbers, confidence));
    }
}
