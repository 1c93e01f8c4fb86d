namespace SweepStats.Statistics;

/// <summary>The likelihood of nested values.</summary>
/// <remarks>
/// A group that shares an effect of variance θ holds means with variances V: together they are one mean Σwm/Σw, w = 1/V, with the
/// variance 1/Σw + θ, and what they scatter about it, Σw(m − mean)². So the likelihood of any nesting is had group by group from
/// the inside, without a matrix; the cost is that of one walk over the groups. Variances are ratios to the residual variance.
/// Source: the determinant and inverse of D + θ11ᵀ (Sherman and Morrison 1950; from memory).
/// </remarks>
internal sealed class NestedData(NestedValues values, Nesting nesting)
{
    /// <summary>Restricted likelihood at variance ratios, outermost first, with its slopes.</summary>
    public NestedLikelihood At(ReadOnlySpan<double> ratios)
    {
        int levels = ratios.Length;
        double[] means = values.Means;
        var below = new GroupMeans(means.Length, levels);
        double logs = 0;
        for (int g = 0; g < means.Length; g++)
        {
            int size = nesting.Sizes[levels - 1][g];
            below.Mean[g] = means[g];
            below.Variance[g] = ratios[levels - 1] + (1.0 / size);
            below.VarianceSlope[(g * levels) + levels - 1] = 1;
            logs += Math.Log(size);
        }

        var total = new NestedSums(levels) { LogDeterminant = logs };
        for (int level = levels - 1; level > 0; level--)
        {
            int l = level;
            var above = new GroupMeans(nesting.Sizes[level - 1].Length, levels);
            total.Join(below, g => nesting.Parent(l, g), above);
            for (int g = 0; g < above.Mean.Length; g++)
            {
                above.Variance[g] += ratios[level - 1];
                above.VarianceSlope[(g * levels) + level - 1] += 1;
            }

            below = above;
        }

        var root = new GroupMeans(1, levels);
        total.Join(below, _ => 0, root);
        return total.Likelihood(values.Within, nesting.ValueCount, values.Centre + root.Mean[0], 1 / root.Variance[0]);
    }
}
