using MathNet.Numerics;
using Normal = MathNet.Numerics.Distributions.Normal;

namespace SweepStats.Statistics;

/// <summary>
/// Whether rows that follow each other are more alike than rows of the same group in any order, over several groups together.
/// </summary>
/// <remarks>
/// The ratios of the groups are averaged, each by what it says. Where the rows can stand in 5 000 orders and more, they are put
/// into other orders by chance, each group by itself: that supposes nothing but that independent rows could have come in any.
/// Where there are fewer orders the mean ratio is held against the symmetric beta distribution that has its first five moments,
/// for independent normal rows. The draws have a fixed seed.
/// Error: relative 0.5 % of a probability down to 1e-5 for ten rows of one column or fewer of several, 8 % for five to nine rows
/// of one; for four of one it is up to four times too large (fixtures/oracles/persistence.R). Drawn ones: two binomial deviations
/// of 20 000.
/// </remarks>
/// <param name="Ratio">Mean ratio.</param>
/// <param name="Probability">Chance of as large a ratio without a correlation.</param>
internal readonly record struct SuccessionTest(double Ratio, double Probability)
{
    /// <summary>Orders from which on they are drawn instead of supposing a distribution.</summary>
    private const double ManyOrders = 5000;

    // Once so many orders reach the ratio, the chance is plainly not small, and no more are drawn.
    private const int Enough = 50;
    private const int MostDraws = 20000;
    private const ulong Seed = 12;

    // Beyond this shape the beta distribution is normal to 0.2 % of such a tail.
    private const double NormalShape = 2000;

    /// <summary>Tests groups together; null where none has three rows that scatter.</summary>
    /// <param name="groups">Rows in the order taken.</param>
    public static SuccessionTest? Of(IReadOnlyList<SerialRows> groups)
    {
        SerialRows[] telling = [.. groups.Where(g => g.Count >= SuccessionRatio.FewestRows && g.Scatters)];
        if (telling.Length == 0)
        {
            return null;
        }

        double[] columns = IndependentColumns.Of(telling);
        SuccessionRatio[] ratios = [.. telling.Select((rows, g) => SuccessionRatio.Of(rows, columns[g]))];
        double all = ratios.Sum(r => r.Weight);
        double[] weights = [.. ratios.Select(r => r.Weight / all)];
        double ratio = ratios.Select((r, g) => weights[g] * r.Value).Sum();
        return new SuccessionTest(ratio, Orders(telling) >= ManyOrders ? Drawn(telling, weights)
            : UpperTail(ratio, ratios, weights));
    }

    // Backwards is the same order.
    private static double Orders(SerialRows[] groups)
    {
        double orders = 1;
        foreach (SerialRows rows in groups)
        {
            orders *= SpecialFunctions.Factorial(Math.Min(rows.Count, 20)) / 2;
        }

        return orders;
    }

    /// <summary>Probability that the mean ratio of independent normal rows exceeds a value.</summary>
    /// <param name="ratio">The value, not negative.</param>
    /// <param name="ratios">Moments of the ratio of each group.</param>
    /// <param name="weights">Weights of the groups; they sum to 1.</param>
    internal static double UpperTail(double ratio, SuccessionRatio[] ratios, double[] weights)
    {
        double second = 0, excess = 0;
        for (int g = 0; g < ratios.Length; g++)
        {
            double square = weights[g] * weights[g];
            second += square * ratios[g].Second;
            excess += square * square * (ratios[g].Fourth - (3 * ratios[g].Second * ratios[g].Second));
        }

        // A symmetric beta variable of shape p on ±b: variance b²/(2p + 1), excess −6/(2p + 3).
        double shape = ((-6 * second * second / excess) - 3) / 2;
        if (!(excess < 0) || shape > NormalShape)
        {
            return Normal.CDF(0, 1, -ratio / Math.Sqrt(second));
        }

        double end = Math.Sqrt(second * ((2 * shape) + 1));
        return SpecialFunctions.BetaRegularized(shape, shape, Math.Clamp((1 - (ratio / end)) / 2, 0, 1));
    }

    private static double Drawn(SerialRows[] groups, double[] weights)
    {
        var orders = groups.Select((rows, g) => new RowOrder(rows, weights[g])).ToArray();
        double reached = orders.Sum(o => o.Ratio());
        var random = new RandomSource(Seed);
        // Equal levels shown by a display are as good in any order; rounding must not part them.
        double least = reached - 1e-12;
        int draws = 0, asMuch = 0;
        while (draws < MostDraws && asMuch < Enough)
        {
            draws++;
            double sum = 0;
            foreach (RowOrder order in orders)
            {
                order.Shuffle(random);
                sum += order.Ratio();
            }

            asMuch += sum >= least ? 1 : 0;
        }

        return asMuch == Enough ? (double)asMuch / draws : (asMuch + 1.0) / (draws + 1);
    }
}
