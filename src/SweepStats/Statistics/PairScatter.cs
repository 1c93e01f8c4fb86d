namespace SweepStats.Statistics;

/// <summary>
/// How a single value scatters that two rows should share, whatever slowly varying distance lies between the rows.
/// </summary>
/// <remarks>
/// Formula: √(Σ (d(f + 1) − d(f))² / 4(n − 1)) with d = a − b. Unit of the values. The difference of two values has twice their
/// variance and a step of it four times, where values scatter independently of each other; an offset, and nearly all of a drift
/// or a slow change of shape, falls out. Where neighbours scatter together it comes out too small, for all pairs alike. Source:
/// von Neumann and others 1941, Annals of Mathematical Statistics 12, 153 (mean square successive difference, from memory).
/// Error: a unit in the last place or so.
/// </remarks>
internal static class PairScatter
{
    /// <summary>The standard deviation of one value.</summary>
    /// <exception cref="ArgumentException">Rows of different lengths, or of fewer than two values.</exception>
    public static double Of(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        if (a.Length != b.Length || a.Length < 2)
        {
            throw new ArgumentException(
                $"Two rows of one length are needed, at least 2; there are {a.Length} and {b.Length} values.");
        }

        double squares = 0;
        double before = a[0] - b[0];
        for (int f = 1; f < a.Length; f++)
        {
            double here = a[f] - b[f];
            squares += (here - before) * (here - before);
            before = here;
        }

        return Math.Sqrt(squares / (4.0 * (a.Length - 1)));
    }
}
