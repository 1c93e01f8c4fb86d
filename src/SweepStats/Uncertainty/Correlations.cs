namespace SweepStats.Uncertainty;

/// <summary>Correlations between the errors of inputs.</summary>
internal static class Correlations
{
    /// <summary>Refuses what is no correlation matrix of these inputs.</summary>
    /// <exception cref="ArgumentException">No input, or a matrix of another size, not symmetric, or beyond ±1.</exception>
    public static void Require(IReadOnlyList<InputQuantity> inputs, double[][]? correlation)
    {
        if (inputs.Count == 0)
        {
            throw new ArgumentException("A result needs at least one input.", nameof(inputs));
        }

        bool fits = correlation is null
            || (correlation.Length == inputs.Count && Array.TrueForAll(correlation, row => row.Length == inputs.Count));
        for (int i = 0; fits && correlation is not null && i < inputs.Count; i++)
        {
            for (int j = 0; j < i; j++)
            {
                fits &= correlation[i][j] == correlation[j][i] && Math.Abs(correlation[i][j]) <= 1;
            }
        }

        if (!fits)
        {
            throw new ArgumentException($"Correlations of {inputs.Count} inputs are {inputs.Count} rows of as many numbers "
                + "between -1 and 1, the same above and below the diagonal.", nameof(correlation));
        }
    }

    /// <summary>Lower triangle L with L·Lᵀ the matrix: turns independent standard normals into correlated ones.</summary>
    /// <exception cref="ArgumentException">The matrix belongs to no set of variables: it is not positive definite.</exception>
    public static double[][] Root(double[][] correlation)
    {
        var root = new double[correlation.Length][];
        for (int i = 0; i < root.Length; i++)
        {
            root[i] = new double[root.Length];
            for (int j = 0; j <= i; j++)
            {
                double rest = i == j ? 1 : correlation[i][j];
                for (int k = 0; k < j; k++)
                {
                    rest -= root[i][k] * root[j][k];
                }

                root[i][j] = i != j ? rest / root[j][j]
                    : rest > 0 ? Math.Sqrt(rest) : throw new ArgumentException(
                        "These correlations contradict each other: no variables have them all.", nameof(correlation));
            }
        }

        return root;
    }
}
