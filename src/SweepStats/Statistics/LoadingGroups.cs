using MathNet.Numerics.LinearAlgebra;

namespace SweepStats.Statistics;

/// <summary>Few loadings that stand for many, with how many each stands for.</summary>
/// <remarks>
/// In η = artanh λ a factor's argument, x·cosh η − z·sinh η, has no singularity. So within a stretch of η the sum of a smooth
/// function over all loadings is Gauss's sum over a few: the nodes and weights, positive, that have the same first moments as the
/// loadings themselves. Up to that number loadings stand for themselves. Source: Golub and Welsch 1969, Mathematics of
/// Computation 23, 221; the recurrence by Lanczos' steps (from memory).
/// </remarks>
internal static class LoadingGroups
{
    private const int Most = 8;
    private const double Stretch = 1;

    /// <summary>Sorted distinct η and their counts in; fewer out, in the same order.</summary>
    public static LoadingGroup[] Fewer(LoadingGroup[] sorted) =>
        [.. sorted.GroupBy(p => Math.Floor(p.Eta / Stretch)).SelectMany(g => g.Count() <= Most ? g.ToArray() : Gauss([.. g]))];

    private static LoadingGroup[] Gauss(LoadingGroup[] points)
    {
        double total = points.Sum(p => p.Times);
        double[] basis = [.. points.Select(p => Math.Sqrt(p.Times / total))];
        var before = new double[points.Length];
        var bands = Matrix<double>.Build.Dense(Most, Most);
        double side = 0;
        for (int k = 0; k < Most; k++)
        {
            double middle = 0, norm = 0;
            for (int i = 0; i < points.Length; i++)
            {
                middle += points[i].Eta * basis[i] * basis[i];
            }

            bands[k, k] = middle;
            for (int i = 0; i < points.Length; i++)
            {
                (before[i], basis[i]) = (basis[i], ((points[i].Eta - middle) * basis[i]) - (side * before[i]));
                norm += basis[i] * basis[i];
            }

            side = Math.Sqrt(norm);
            for (int i = 0; i < points.Length; i++)
            {
                basis[i] /= side;
            }

            if (k + 1 < Most)
            {
                bands[k, k + 1] = bands[k + 1, k] = side;
            }
        }

        var parts = bands.Evd(Symmetricity.Symmetric);
        return [.. Enumerable.Range(0, Most)
            .Select(k => new LoadingGroup(parts.EigenValues[k].Real, total * Math.Pow(parts.EigenVectors[0, k], 2)))
            .OrderBy(n => n.Eta)];
    }
}
