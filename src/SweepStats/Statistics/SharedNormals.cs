using MathNet.Numerics;
using MathNet.Numerics.Integration;

namespace SweepStats.Statistics;

/// <summary>Standard normal variables, some of which share an error: the probability that each stays below a threshold of its
/// own.</summary>
/// <remarks>
/// Variables of one cluster are X_i = λ_i·Z + √(1 − λ_i²)·Z_i, all Z independent standard normal; clusters are independent. Given
/// Z the X_i are independent, so a cluster takes one integral of a product, by Gauss and Legendre on panels of one standard
/// deviation; a loading of 1 is Z itself and ends the integral. A squared loading between 0.95 and 1 is taken as 0.95: the rule
/// would not see so steep a step, and less correlation makes the probability smaller (Slepian 1962), which errs towards wider
/// limits. Source: Dunnett and Sobel 1955, Biometrika 42, 258 (from memory). Error: absolute 1e-6 (fixtures/oracles/receivers.R).
/// </remarks>
internal static class SharedNormals
{
    private const double Reach = 6.5, MostSquaredLoading = 0.95;
    private const int Panels = 13, Order = 8;

    private static readonly GaussLegendreRule Rule = new(-1, 1, Order);

    /// <summary>P(X_i ≤ t_i for all i).</summary>
    /// <param name="thresholds">t_i.</param>
    /// <param name="sharing">Which variables share what.</param>
    public static double AllBelow(ReadOnlySpan<double> thresholds, SharedPattern sharing)
    {
        double all = 1;
        foreach (int[] cluster in sharing.Clusters)
        {
            all *= cluster.Length == 1 ? Below(thresholds[cluster[0]]) : AllBelow(thresholds, cluster, sharing.Loadings);
        }

        return all;
    }

    private static double AllBelow(ReadOnlySpan<double> thresholds, int[] cluster, double[] loadings)
    {
        double end = Reach;
        foreach (int i in cluster)
        {
            end = loadings[i] >= 1 ? Math.Min(end, thresholds[i]) : end;
        }

        double sum = 0, half = (end + Reach) / Panels / 2;
        for (int panel = 0; panel < Panels && half > 0; panel++)
        {
            double middle = (((2 * panel) + 1) * half) - Reach;
            for (int k = 0; k < Order; k++)
            {
                double z = middle + (half * Rule.GetAbscissa(k));
                sum += half * Rule.GetWeight(k) * Density(z) * Rest(z, thresholds, cluster, loadings);
            }
        }

        return sum;
    }

    private static double Rest(double z, ReadOnlySpan<double> thresholds, int[] cluster, double[] loadings)
    {
        double rest = 1;
        foreach (int i in cluster)
        {
            if (loadings[i] < 1)
            {
                double shared = Math.Min(loadings[i] * loadings[i], MostSquaredLoading);
                rest *= Below((thresholds[i] - (Math.Sqrt(shared) * z)) / Math.Sqrt(1 - shared));
            }
        }

        return rest;
    }

    private static double Density(double z) => Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);

    private static double Below(double t) => t > Reach ? 1 : 0.5 * SpecialFunctions.Erfc(-t / Math.Sqrt(2));
}
