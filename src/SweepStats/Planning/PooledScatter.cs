using SweepStats.Alignment;
using SweepStats.Statistics;

namespace SweepStats.Planning;

/// <summary>
/// Variances between and within placements at one frequency, pooled over specimens by one-way analysis of variance.
/// </summary>
internal sealed class PooledScatter
{
    private double _between, _within, _size;
    private int _betweenDof, _withinDof;

    /// <summary>Variance within a placement in dB²; null where no placement has two sweeps.</summary>
    public double? Within => _withinDof > 0 ? _within / _withinDof : null;

    /// <summary>
    /// Variance of placement means times their effective number of sweeps in dB²; null where no specimen has two placements.
    /// </summary>
    public double? Between => _betweenDof > 0 ? _between / _betweenDof : null;

    /// <summary>Effective number of sweeps of a placement.</summary>
    public double Size => _size / _betweenDof;

    /// <summary>Adds the levels of one specimen.</summary>
    /// <param name="block">Its sweeps.</param>
    /// <param name="placement">The placement of each, numbered from 0.</param>
    /// <param name="f">Frequency.</param>
    public void Add(SweepBlock block, int[] placement, int f)
    {
        double[] levels = [.. Enumerable.Range(0, block.SweepCount).Select(j => block[j][f])];
        int groups = placement.Max() + 1;
        if (groups == 1 || groups == levels.Length)
        {
            // One placement, or none with two sweeps: all scatter is of one kind.
            double squares = levels.Length > 1 ? Sample.SquaredDeviations(levels, Sample.Mean(levels)) : 0;
            if (groups == 1)
            {
                (_within, _withinDof) = (_within + squares, _withinDof + levels.Length - 1);
            }
            else
            {
                AddBetween(squares, groups - 1, 1);
            }

            return;
        }

        OneWayAnova parts = OneWayAnova.Of(levels, placement);
        (_within, _withinDof) = (_within + parts.WithinSumOfSquares, _withinDof + parts.WithinDegreesOfFreedom);
        AddBetween(parts.BetweenSumOfSquares, parts.BetweenDegreesOfFreedom, parts.EffectiveGroupSize);
    }

    private void AddBetween(double squares, int dof, double size)
    {
        _between += squares;
        _betweenDof += dof;
        _size += dof * size;
    }
}
