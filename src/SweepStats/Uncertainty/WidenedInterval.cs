using System.Runtime.InteropServices;
using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>Half-width of an interval from few repeats once errors that repeats do not show are added.</summary>
/// <remarks>
/// A half-width a from repeats is t standard errors of a Student variable; with the systematic error B beside it the half-width
/// is the quantile of (a/t)·T + B at the same probability: exactly a without B, the quantile of B without a. What has to be added
/// in quadrature, b² = (half-width)² − a², hardly changes and is read from a table over a/(t·u(B)) and the degrees of freedom.
/// Adding 1.96·u(B) instead reaches past the ends of a rectangular error that rules. Unit: dB. Error: 0.5 % of the half-width.
/// Source: quantile of the sum of independent variables; JCGM 101:2008, 5.
/// </remarks>
internal sealed class WidenedInterval
{
    private static readonly double[] Ratios = [0.05, 0.1, 0.2, 0.35, 0.55, 0.8, 1.1, 1.6, 2.5, 4, 8, 25];
    private static readonly double[] Freedoms = [1, 1.5, 2, 3, 4, 6, 10, 25, double.PositiveInfinity];

    private readonly SystematicError _error;
    private readonly double _probability;
    private readonly double _alone;

    // Not a number until it is asked for: a campaign asks for few. Whoever finds one finds the same bits.
    private readonly double[,] _added = new double[Freedoms.Length, Ratios.Length];

    /// <param name="error">B.</param>
    /// <param name="probability">Probability below the upper end, more than one half.</param>
    public WidenedInterval(SystematicError error, double probability)
    {
        (_error, _probability) = (error, probability);
        _alone = error.Quantile(probability);
        MemoryMarshal.CreateSpan(ref _added[0, 0], _added.Length).Fill(double.NaN);
    }

    /// <summary>The whole half-width.</summary>
    /// <param name="half">Half-width from repeats alone, not negative; an infinite one stays.</param>
    /// <param name="degreesOfFreedom">Behind it.</param>
    public double Half(double half, double degreesOfFreedom)
    {
        if (_error.StandardUncertainty == 0 || !double.IsFinite(half))
        {
            return half;
        }

        double ratio = half / StudentQuantile.Of(_probability).At(degreesOfFreedom) / _error.StandardUncertainty;
        return Math.Sqrt((half * half) + Added(ratio, degreesOfFreedom));
    }

    private double Added(double ratio, double degreesOfFreedom)
    {
        (int v, double freedom) = Place(Freedoms, Math.Clamp(degreesOfFreedom, 1, double.MaxValue), x => 1 / x);
        double between = 0;
        foreach ((int row, double weight) in new[] { (v, 1 - freedom), (v + 1, freedom) })
        {
            between += weight * AlongRatios(row, ratio);
        }

        return between;
    }

    private double AlongRatios(int row, double ratio)
    {
        if (ratio <= Ratios[0])
        {
            double share = ratio / Ratios[0];
            return ((1 - share) * _alone * _alone) + (share * Tabled(row, 0));
        }

        (int r, double part) = Place(Ratios, Math.Min(ratio, Ratios[^1]), Math.Log);
        return ((1 - part) * Tabled(row, r)) + (part * Tabled(row, r + 1));
    }

    private double Tabled(int v, int r)
    {
        if (double.IsNaN(_added[v, r]))
        {
            double t = StudentT.Quantile(_probability, Freedoms[v]), scale = Ratios[r] * _error.StandardUncertainty;
            double whole = Quantile(scale, Freedoms[v], (t * scale) + _alone);
            _added[v, r] = Math.Max(0, (whole * whole) - (t * scale * t * scale));
        }

        return _added[v, r];
    }

    private static (int Index, double Share) Place(double[] grid, double value, Func<double, double> scale)
    {
        int index = 0;
        while (index < grid.Length - 2 && grid[index + 1] <= value)
        {
            index++;
        }

        return (index, (scale(value) - scale(grid[index])) / (scale(grid[index + 1]) - scale(grid[index])));
    }

    // Regula falsi with the stale end's distance halved: a dozen steps.
    private double Quantile(double scale, double freedom, double most)
    {
        (double low, double high) = (0, most);
        (double under, double over) = (0.5 - _probability, Below(most, scale, freedom) - _probability);
        for (int step = 0; step < 60 && high - low > 1e-6 * most; step++)
        {
            double at = over > under ? low - (under * (high - low) / (over - under)) : (low + high) / 2;
            double excess = Below(at, scale, freedom) - _probability;
            if (excess < 0)
            {
                (low, under, over) = (at, excess, over / 2);
            }
            else
            {
                (high, over, under) = (at, excess, under / 2);
            }

            if (Math.Abs(excess) < 1e-9)
            {
                return at;
            }
        }

        return (low + high) / 2;
    }

    private double Below(double value, double scale, double freedom)
    {
        double below = 0;
        foreach (double node in _error.Nodes)
        {
            below += 1 - StudentT.UpperTail((value - node) / scale, freedom);
        }

        return below / _error.Nodes.Length;
    }
}
