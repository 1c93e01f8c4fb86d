using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

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
    // Φ⁻¹(0.75): half of normal values lie nearer to their mean.
    private const double MedianOfNormal = 0.6744897501960817;

    /// <summary>The standard deviation of one value.</summary>
    /// <exception cref="ArgumentException">Rows of different lengths, or of fewer than two values.</exception>
    public static double Of(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        Check(a, b);
        return Math.Sqrt(SquaredSteps(a, b) / (4.0 * (a.Length - 1)));
    }

    /// <summary>The same by the median of the steps, for normal scatter: a few values far off do not bear on it.</summary>
    /// <remarks>Formula: median |d(f + 1) − d(f)| / 2Φ⁻¹(0.75).</remarks>
    /// <exception cref="ArgumentException">Rows of different lengths, or of fewer than two values.</exception>
    public static double Middle(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        Check(a, b);
        var steps = new double[a.Length - 1];
        for (int f = 0; f < steps.Length; f++)
        {
            steps[f] = Step(a, b, f);
        }

        return Sample.Median(steps) / (2 * MedianOfNormal);
    }

    /// <summary>The same where it lies below a limit, else null: that it does not is seen sooner than what it is.</summary>
    /// <inheritdoc cref="Middle"/>
    public static double? MiddleBelow(ReadOnlySpan<double> a, ReadOnlySpan<double> b, double limit)
    {
        Check(a, b);
        // A hair more, for the rounding of a division.
        double farthest = limit * 2 * MedianOfNormal * (1 + 1e-12);
        int near = 0;
        for (int f = 0; f < a.Length - 1; f++)
        {
            near += Step(a, b, f) <= farthest ? 1 : 0;
        }

        return 2 * near >= a.Length - 1 && Middle(a, b) is var middle && middle < limit ? middle : null;
    }

    private static double Step(ReadOnlySpan<double> a, ReadOnlySpan<double> b, int f) =>
        Math.Abs(a[f + 1] - b[f + 1] - (a[f] - b[f]));

    // Four sums beside each other on every machine, so that none has other digits.
    private static double SquaredSteps(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        Vector128<double> even = Vector128<double>.Zero, odd = Vector128<double>.Zero;
        int f = 1;
        for (; f + 4 <= a.Length; f += 4)
        {
            Vector128<double> first = Steps(a, b, f), second = Steps(a, b, f + 2);
            even += first * first;
            odd += second * second;
        }

        double squares = Vector128.Sum(even + odd);
        for (; f < a.Length; f++)
        {
            double step = (a[f] - b[f]) - (a[f - 1] - b[f - 1]);
            squares += step * step;
        }

        return squares;
    }

    private static void Check(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        if (a.Length != b.Length || a.Length < 2)
        {
            throw new ArgumentException(
                $"Two rows of one length are needed, at least 2; there are {a.Length} and {b.Length} values.");
        }
    }

    private static Vector128<double> Steps(ReadOnlySpan<double> a, ReadOnlySpan<double> b, int f) =>
        (Two(a, f) - Two(b, f)) - (Two(a, f - 1) - Two(b, f - 1));

    private static Vector128<double> Two(ReadOnlySpan<double> row, int f) =>
        Vector128.LoadUnsafe(in MemoryMarshal.GetReference(row), (nuint)f);
}
