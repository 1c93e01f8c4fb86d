using SweepStats.Statistics;

namespace SweepStats.Trends;

/// <summary>Error of a straight line where specimens may scatter more at one end of the factor than at the other.</summary>
/// <remarks>
/// Wear mostly makes specimens less alike. The line at v is Σ wᵢyᵢ with wᵢ = 1/n + (xᵢ − x̄)(v − x̄)/Σ(x − x̄)²; its variance is
/// Σ wᵢ²eᵢ²/(1 − hᵢ), with e the residuals and h the leverages, so that each specimen counts by the scatter near it (HC2). Its
/// degrees of freedom are those of the same sum where all scatter alike: (tr A)²/tr A² with A = MDM, M = I − H,
/// D = diag(wᵢ²/(1 − hᵢ)). Source: MacKinnon and White 1985; Bell and McCaffrey 2002 (both from memory). Error: against R,
/// relative 1e-9 (fixtures/oracles/local-scatter.R). Unit: that of y.
/// </remarks>
internal sealed class LocalScatter
{
    // A specimen that alone holds an end of the line has no residual to tell of its scatter; only rounding is left.
    private const double LeastFree = 1e-9;

    private readonly double[] _dx, _free;
    private readonly double _mean, _squares;
    private readonly double[,] _spread = new double[3, 3];

    /// <param name="x">Value of each specimen; one differs from the others.</param>
    public LocalScatter(double[] x)
    {
        (_dx, _mean) = (Deviations.FromMean(x), Sample.Mean(x));
        _squares = Deviations.Product(_dx, _dx);
        _free = [.. _dx.Select(d => Math.Max(LeastFree, 1 - Hat(d, d)))];
        AddSpread();
    }

    /// <summary>How much of its own scatter each residual keeps: one less its leverage.</summary>
    public IReadOnlyList<double> Free => _free;

    /// <summary>Error of a line at a value of the factor.</summary>
    /// <param name="residuals">Of each specimen about the line.</param>
    /// <param name="value">Where.</param>
    public Contribution ErrorAt(double[] residuals, double value)
    {
        double u = value - _mean, variance = 0, trace = 0;
        for (int i = 0; i < _dx.Length; i++)
        {
            double weight = Hat(_dx[i], u);
            trace += weight * weight;
            variance += Math.Pow(weight * residuals[i], 2) / _free[i];
        }

        return new Contribution(Math.Sqrt(variance), trace * trace / Spread(u));
    }

    private double Hat(double dx, double u) => (1.0 / _dx.Length) + (dx * u / _squares);

    // tr A² is a polynomial in u, whose coefficients all frequencies share: wᵢ² = p₀ + p₁u + p₂u² for each specimen.
    private void AddSpread()
    {
        double[][] powers = [.. _dx.Select((d, i) => Powers(d, _free[i]))];
        for (int i = 0; i < _dx.Length; i++)
        {
            for (int j = 0; j < _dx.Length; j++)
            {
                double left = i == j ? _free[i] : -Hat(_dx[i], _dx[j]);
                Add(left * left, powers[i], powers[j]);
            }
        }
    }

    private double[] Powers(double dx, double free)
    {
        double level = 1.0 / _dx.Length, slope = dx / _squares;
        return [level * level / free, 2 * level * slope / free, slope * slope / free];
    }

    private void Add(double factor, double[] first, double[] second)
    {
        for (int k = 0; k < first.Length; k++)
        {
            for (int l = 0; l < second.Length; l++)
            {
                _spread[k, l] += factor * first[k] * second[l];
            }
        }
    }

    private double Spread(double u)
    {
        double[] powers = [1, u, u * u];
        double sum = 0;
        for (int k = 0; k < powers.Length; k++)
        {
            for (int l = 0; l < powers.Length; l++)
            {
                sum += powers[k] * powers[l] * _spread[k, l];
            }
        }

        return sum;
    }
}
