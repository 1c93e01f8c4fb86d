namespace SweepStats.Statistics;

/// <summary>
/// Means of the groups of one level, their variances as ratios to the residual, and the slopes of both by each ratio (group by
/// group).
/// </summary>
internal sealed class GroupMeans(int groups, int ratios)
{
    /// <summary>Mean of each group.</summary>
    public double[] Mean { get; } = new double[groups];

    /// <summary>Variance of each mean, as a ratio to the residual variance.</summary>
    public double[] Variance { get; } = new double[groups];

    /// <summary>Slope of each mean by each ratio.</summary>
    public double[] MeanSlope { get; } = new double[groups * ratios];

    /// <summary>Slope of each variance by each ratio.</summary>
    public double[] VarianceSlope { get; } = new double[groups * ratios];
}

/// <summary>
/// Log determinant and weighted squares of nested groups, gathered from the inside outwards, with their slopes.
/// </summary>
internal sealed class NestedSums(int ratios)
{
    private readonly double[] _logSlope = new double[ratios];
    private readonly double[] _squareSlope = new double[ratios];
    private double _squares;

    /// <summary>Log determinant so far, of ratios to the residual variance; starts with the innermost groups' sizes.</summary>
    public double LogDeterminant { get; set; }

    /// <summary>Joins the groups of one level to those of the level above, whose own effect is still left out.</summary>
    public void Join(GroupMeans below, Func<int, int> parent, GroupMeans above)
    {
        int groups = below.Mean.Length, count = above.Mean.Length;
        var weight = new double[count];
        var weightSlope = new double[count * ratios];
        for (int g = 0; g < groups; g++)
        {
            int p = parent(g);
            double w = 1 / below.Variance[g];
            LogDeterminant -= Math.Log(w);
            weight[p] += w;
            above.Mean[p] += w * below.Mean[g];
            for (int k = 0; k < ratios; k++)
            {
                double slope = below.VarianceSlope[(g * ratios) + k];
                _logSlope[k] += slope * w;
                weightSlope[(p * ratios) + k] -= slope * w * w;
                above.MeanSlope[(p * ratios) + k] += (w * below.MeanSlope[(g * ratios) + k]) - (slope * w * w * below.Mean[g]);
            }
        }

        for (int p = 0; p < count; p++)
        {
            above.Mean[p] /= weight[p];
            above.Variance[p] = 1 / weight[p];
            LogDeterminant += Math.Log(weight[p]);
            for (int k = 0; k < ratios; k++)
            {
                int at = (p * ratios) + k;
                above.MeanSlope[at] = (above.MeanSlope[at] - (above.Mean[p] * weightSlope[at])) / weight[p];
                above.VarianceSlope[at] = -weightSlope[at] / (weight[p] * weight[p]);
                _logSlope[k] += weightSlope[at] / weight[p];
            }
        }

        for (int g = 0; g < groups; g++)
        {
            double w = 1 / below.Variance[g], apart = below.Mean[g] - above.Mean[parent(g)];
            _squares += w * apart * apart;
            for (int k = 0; k < ratios; k++)
            {
                // The mean's own move drops out: the weighted distances from it sum to zero.
                _squareSlope[k] += (2 * w * apart * below.MeanSlope[(g * ratios) + k])
                    - (below.VarianceSlope[(g * ratios) + k] * w * w * apart * apart);
            }
        }
    }

    /// <summary>−2 log of the restricted likelihood with the residual variance at its best.</summary>
    public NestedLikelihood Likelihood(double within, int values, double mean, double precision)
    {
        double degrees = values - 1.0, squares = within + _squares, residual = squares / degrees;
        var slopes = new double[ratios];
        for (int k = 0; k < ratios; k++)
        {
            slopes[k] = _logSlope[k] + (degrees * _squareSlope[k] / squares);
        }

        return new NestedLikelihood((degrees * (1 + Math.Log(2 * Math.PI * residual))) + LogDeterminant, slopes, residual,
            mean, precision);
    }
}

/// <summary>−2 log of the restricted likelihood at variance ratios.</summary>
/// <param name="Criterion">Its value.</param>
/// <param name="Slopes">By each ratio.</param>
/// <param name="Residual">Best residual variance for these ratios.</param>
/// <param name="Mean">Best mean for them.</param>
/// <param name="Precision">Residual variance over the variance of that mean.</param>
internal sealed record NestedLikelihood(double Criterion, double[] Slopes, double Residual, double Mean, double Precision);
