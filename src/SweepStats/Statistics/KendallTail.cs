namespace SweepStats.Statistics;

/// <summary>
/// Exact chances of Kendall's S, rises minus falls over all pairs of a series, where every order is equally likely.
/// </summary>
/// <remarks>
/// The number of falls among n values is that among n − 1 plus a number from 0 to n − 1, each equally likely: P_n(f) = Σⱼ
/// P_{n−1}(f − j)/n. The sum slides over the rising half only, where what leaves it is smaller than what stays, and the other
/// half mirrors it: no digits cancel. Assumes no ties. Error: relative 1e-13. Source: Kendall 1938, Biometrika 30, 81 (from
/// memory).
/// </remarks>
internal static class KendallTail
{
    /// <summary>
    /// Up to this number of values the exact chances are worth their work; beyond it the normal approximation is good to 1e-4.
    /// </summary>
    public const int MostValues = 50;

    /// <summary>Probability of at least <paramref name="s"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The number of values is not between 2 and <see cref="MostValues"/>.
    /// </exception>
    public static double Upper(int count, long s)
    {
        double[] falls = Falls(count);
        long pairs = falls.Length - 1;
        // At least s means at most (pairs − s)/2 falls; halves are rounded down because S moves in steps of two.
        return Below(falls, (long)Math.Floor((pairs - s) / 2.0));
    }

    /// <summary>
    /// The smallest S, in steps of two, that is reached with a chance of at most <paramref name="level"/>; none where even a
    /// steady rise is likelier.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The number of values is not between 2 and <see cref="MostValues"/>, or the level not between 0 and 1.
    /// </exception>
    public static int? Critical(int count, double level)
    {
        FiniteValues.RequireLevel(level);
        double[] falls = Falls(count);
        int pairs = falls.Length - 1;
        int? critical = null;
        double chance = 0;
        for (int f = 0; f <= pairs; f++)
        {
            chance += falls[f];
            // Levels come from 1 − 0.95 and the like; a chance that equals one counts as reached.
            if (chance > level * (1 + 1e-12))
            {
                break;
            }

            critical = pairs - (2 * f);
        }

        return critical;
    }

    private static double Below(double[] falls, long most)
    {
        // The shorter side is summed; the chances are symmetrical.
        long pairs = falls.Length - 1;
        if (most < 0)
        {
            return 0;
        }

        if (most >= pairs)
        {
            return 1;
        }

        if (2 * most >= pairs)
        {
            return 1 - Below(falls, pairs - most - 1);
        }

        double sum = 0;
        for (int f = 0; f <= most; f++)
        {
            sum += falls[f];
        }

        return sum;
    }

    private static double[] Falls(int count)
    {
        if (count < 2 || count > MostValues)
        {
            throw new ArgumentOutOfRangeException(nameof(count), count, $"Exact chances are kept for 2 to {MostValues} values.");
        }

        double[] falls = [1];
        for (int n = 2; n <= count; n++)
        {
            var next = new double[falls.Length + n - 1];
            double window = 0;
            for (int f = 0; f <= next.Length / 2; f++)
            {
                window += f < falls.Length ? falls[f] : 0;
                window -= f >= n ? falls[f - n] : 0;
                next[f] = window / n;
                next[^(f + 1)] = next[f];
            }

            falls = next;
        }

        return falls;
    }
}
