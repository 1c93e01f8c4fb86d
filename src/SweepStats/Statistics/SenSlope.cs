using MathNet.Numerics.Distributions;

namespace SweepStats.Statistics;

/// <summary>Slope of a series that single wild values cannot pull, and its interval.</summary>
/// <remarks>
/// The median of the slopes (yⱼ − yᵢ)/(xⱼ − xᵢ) of all pairs, unit of y per unit of x. The interval is free of the distribution:
/// its ends are the sorted slopes at places (N − C)/2 and (N + C)/2 + 1 of N, C what Kendall's S exceeds by chance. Without ties
/// in y and up to <see cref="KendallTail.MostValues"/> values C is exact and the interval holds the truth at least as often as
/// asked; otherwise C = z√variance and places between two slopes are interpolated. An end is infinite where so few values allow
/// no limit (fewer than five at 95 %). Assumes independent scatter of y and an x without error. Source: Sen 1968, Journal of the
/// American Statistical Association 63, 1379 (from memory); US EPA, Unified Guidance 2009, section 17.3. Error: relative 1e-14 of
/// the slopes as stored. Takes n²/2 steps and as much room.
/// </remarks>
/// <param name="Slope">Median slope.</param>
/// <param name="Interval">Two-sided interval of the slope.</param>
internal sealed record SenSlope(double Slope, Interval Interval)
{
    /// <summary>Estimates the slope.</summary>
    /// <param name="x">Where or when each value was taken; all different, in any order.</param>
    /// <param name="y">The values.</param>
    /// <param name="confidence">Level of the interval.</param>
    /// <exception cref="ArgumentException">
    /// Fewer than three values, one that is not finite, numbers of x and y that differ, or an x that comes twice.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is <c>default</c>.</exception>
    public static SenSlope Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y, Confidence confidence)
    {
        FiniteValues.RequirePairs(x, y, 3);
        FiniteValues.RequireLevel(confidence.Level);
        double[] slopes = Sorted(x, y);
        double variance = MannKendall.VarianceOf(y, out bool tied);
        double chance = 1 - confidence.TwoSidedQuantile;
        double spread = tied || y.Length > KendallTail.MostValues
            ? -Normal.InvCDF(0, 1, chance) * Math.Sqrt(variance)
            : KendallTail.Critical(y.Length, chance) - 2 ?? double.PositiveInfinity;
        return new SenSlope(Sample.Median(slopes), Limits(slopes, spread));
    }

    /// <summary>Slopes at the places that a spread C of Kendall's S leaves inside.</summary>
    internal static Interval Limits(double[] sorted, double spread)
    {
        // Places run from 1; beyond the outermost slope there is no limit.
        double low = (sorted.Length - spread) / 2;
        return low < 1
            ? new Interval(double.NegativeInfinity, double.PositiveInfinity)
            : new Interval(At(sorted, low - 1), At(sorted, sorted.Length - low));
    }

    private static double At(double[] sorted, double place)
    {
        int left = Math.Min((int)place, sorted.Length - 1);
        return left == place ? sorted[left] : sorted[left] + ((place - left) * (sorted[left + 1] - sorted[left]));
    }

    private static double[] Sorted(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var slopes = new double[x.Length * (x.Length - 1) / 2];
        int next = 0;
        for (int j = 1; j < x.Length; j++)
        {
            for (int i = 0; i < j; i++)
            {
                if (x[i] == x[j])
                {
                    throw new ArgumentException(
                        FormattableString.Invariant($"Each x may come once; {x[i]} comes twice."), nameof(x));
                }

                slopes[next++] = (y[j] - y[i]) / (x[j] - x[i]);
            }
        }

        Array.Sort(slopes);
        return slopes;
    }
}
