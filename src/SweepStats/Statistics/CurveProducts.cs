using System.Runtime.Intrinsics;

namespace SweepStats.Statistics;

/// <summary>How the curves of several groups go together: sums of the products of every two of them over their points.</summary>
/// <remarks>
/// Thousands of curves meet each other by millions: four at a time pass by all others, so that each is fetched from memory a
/// quarter as often. Each lane adds up every eighth point, and the fours are summed in their order, so that neither the width of
/// the machine's registers nor the number of threads changes a digit. A four holds curves of one group: of groups of one or two
/// it is not full, and costs as much. Squared unit of the values, to the fourth power for
/// <see cref="OfGroups"/>. Error: a unit in the last place or so of each sum.
/// </remarks>
internal sealed class CurveProducts
{
    private const int Four = 4;

    private CurveProducts(double[] squares, double[,] ofGroups)
    {
        (Squares, OfGroups) = (squares, ofGroups);
    }

    /// <summary>The product of each curve with itself.</summary>
    public double[] Squares { get; }

    /// <summary>Of every two groups the sum of the squared products of their curves, of a group with itself of its own.</summary>
    public double[,] OfGroups { get; }

    /// <param name="curves">One row a curve, all of one length.</param>
    /// <param name="groups">The group of each curve.</param>
    /// <param name="count">How many groups.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static CurveProducts Of(double[][] curves, int[] groups, int count, int threads)
    {
        int[] firsts = [.. Starts(groups)];
        Block[] blocks = SideBySide.Of(firsts.Length, threads,
            b => Block.Of(curves, groups, firsts[b], b + 1 < firsts.Length ? firsts[b + 1] : curves.Length, count));
        var ofGroups = new double[count, count];
        foreach (Block block in blocks)
        {
            for (int other = 0; other < count; other++)
            {
                ofGroups[block.Group, other] += block.Sums[other];
                ofGroups[other, block.Group] += other == block.Group ? block.OfTwo : block.Sums[other];
            }
        }

        return new CurveProducts([.. blocks.SelectMany(b => b.Squares)], ofGroups);
    }

    // Fours of one group.
    private static IEnumerable<int> Starts(int[] groups)
    {
        int start = 0;
        for (int i = 0; i < groups.Length; i++)
        {
            if (i == 0 || i - start == Four || groups[i] != groups[start])
            {
                yield return start = i;
            }
        }
    }

    /// <summary>Up to four curves of one group, and what they have in common with those before them.</summary>
    /// <param name="Group">Their group.</param>
    /// <param name="Squares">The product of each with itself.</param>
    /// <param name="Sums">Squared products with themselves and all before, each two once, by the group of the earlier.</param>
    /// <param name="OfTwo">What of these two different curves of their own group make, which count from either side.</param>
    private sealed record Block(int Group, double[] Squares, double[] Sums, double OfTwo)
    {
        /// <summary>The curves from the first to before the end, which are of one group and four at most.</summary>
        public static Block Of(double[][] curves, int[] groups, int first, int end, int count)
        {
            double[] sums = new double[count], squares = new double[end - first];
            double ofTwo = 0;
            Span<double> products = stackalloc double[Four];
            for (int j = 0; j < end; j++)
            {
                Multiply(curves.AsSpan(first, end - first), curves[j], products);
                for (int i = Math.Max(first, j); i < end; i++)
                {
                    double product = products[i - first];
                    sums[groups[j]] += product * product;
                    ofTwo += i != j && groups[j] == groups[i] ? product * product : 0;
                    // The last one that a curve meets is itself.
                    squares[i - first] = product;
                }
            }

            return new Block(groups[first], squares, sums, ofTwo);
        }
    }

    private static void Multiply(ReadOnlySpan<double[]> rows, ReadOnlySpan<double> by, Span<double> products)
    {
        // Where there are fewer than four the last one stands in for the others.
        ReadOnlySpan<double> a = rows[0], b = rows[Math.Min(1, rows.Length - 1)], c = rows[Math.Min(2, rows.Length - 1)],
            d = rows[^1];
        Vector512<double> first = default, second = default, third = default, fourth = default;
        int f = 0;
        for (; f + Vector512<double>.Count <= by.Length; f += Vector512<double>.Count)
        {
            Vector512<double> other = Vector512.Create(by[f..]);
            first += Vector512.Create(a[f..]) * other;
            second += Vector512.Create(b[f..]) * other;
            third += Vector512.Create(c[f..]) * other;
            fourth += Vector512.Create(d[f..]) * other;
        }

        products[0] = Whole(first, a[f..], by[f..]);
        products[1] = Whole(second, b[f..], by[f..]);
        products[2] = Whole(third, c[f..], by[f..]);
        products[3] = Whole(fourth, d[f..], by[f..]);
    }

    private static double Whole(Vector512<double> lanes, ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        double sum = 0;
        for (int f = 0; f < a.Length; f++)
        {
            sum += a[f] * b[f];
        }

        for (int lane = 0; lane < Vector512<double>.Count; lane++)
        {
            sum += lanes[lane];
        }

        return sum;
    }
}
