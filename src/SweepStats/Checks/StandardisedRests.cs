using System.Numerics;
using SweepStats.Repeats;
using SweepStats.Statistics;

namespace SweepStats.Checks;

/// <summary>
/// What is left of repeated sweeps without their offsets, about the mean of the sweeps, in units of the scatter of its
/// neighbourhood.
/// </summary>
/// <remarks>
/// About their median one of three would have no rest at all. Counted point by point, at each of them sweep by sweep; points
/// whose scatter is hidden by the steps of the display are left out. Only those asked for are worked out.
/// </remarks>
internal sealed class StandardisedRests
{
    private const int HalfWidth = 20;

    private readonly SweepRests[] _rests;
    private readonly double[] _means;
    private readonly double[] _scatters;
    private readonly int[] _points;

    /// <param name="group">The sweeps.</param>
    /// <param name="coarsest">Scatter in dB that a point has to show more of.</param>
    public StandardisedRests(RepeatGroup group, double coarsest)
    {
        _rests = [.. group.Sweeps.Select(s => s.RestDb)];
        var row = new double[group.Points.Length];
        _means = Means(_rests, row);
        _scatters = Scatters(Squares(_rests, _means, row), _rests.Length);
        _points = [.. Enumerable.Range(0, _scatters.Length).Where(p => _scatters[p] > coarsest)];
    }

    /// <summary>How many there are.</summary>
    public int Count => _points.Length * _rests.Length;

    /// <summary>One of them.</summary>
    public double this[int number]
    {
        get
        {
            int p = _points[number / _rests.Length];
            return (_rests[number % _rests.Length][p] - _means[p]) / _scatters[p];
        }
    }

    /// <summary>All of them.</summary>
    public double[] All() => [.. Enumerable.Range(0, Count).Select(number => this[number])];

    private static double[] Means(SweepRests[] rests, double[] row)
    {
        var sums = new ColumnSums(row.Length);
        foreach (SweepRests sweep in rests)
        {
            sweep.CopyTo(row);
            sums.Add(row);
        }

        return sums.Means();
    }

    private static double[] Squares(SweepRests[] rests, double[] means, double[] row)
    {
        var squares = new double[means.Length];
        foreach (SweepRests sweep in rests)
        {
            sweep.CopyTo(row);
            for (int p = 0; p < squares.Length; p++)
            {
                double rest = row[p] - means[p];
                squares[p] += rest * rest;
            }
        }

        return squares;
    }

    // Root mean square over the neighbourhood, summed from its first point to its last whatever the width of the registers.
    private static double[] Scatters(double[] squares, int rows)
    {
        var scatters = new double[squares.Length];
        int lanes = Vector<double>.Count, inner = squares.Length - HalfWidth;
        for (int p = 0; p < squares.Length; p++)
        {
            if (p >= HalfWidth && p + lanes <= inner)
            {
                Around(squares, p, rows).CopyTo(scatters, p);
                p += lanes - 1;
                continue;
            }

            int first = Math.Max(0, p - HalfWidth), last = Math.Min(squares.Length - 1, p + HalfWidth);
            double sum = 0;
            for (int beside = first; beside <= last; beside++)
            {
                sum += squares[beside];
            }

            scatters[p] = Math.Sqrt(sum / (rows * (last - first + 1)));
        }

        return scatters;
    }

    // At points with a whole neighbourhood to both sides.
    private static Vector<double> Around(double[] squares, int point, int rows)
    {
        Vector<double> sum = Vector<double>.Zero;
        for (int beside = point - HalfWidth; beside <= point + HalfWidth; beside++)
        {
            sum += new Vector<double>(squares, beside);
        }

        return Vector.SquareRoot(sum / new Vector<double>(rows * ((2 * HalfWidth) + 1)));
    }
}
