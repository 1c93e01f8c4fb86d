namespace SweepStats.Statistics;

/// <summary>
/// Values taken one after the other whose covariance depends on how far apart they stand: what their mean and their scatter are
/// worth.
/// </summary>
/// <remarks>
/// With the covariances g₀, g₁, … of values 0, 1, … steps apart: Var(mean) = [n·g₀ + 2Σ(n − l)·g_l]/n²,
/// E s² = n/(n − 1)·[g₀ − Var(mean)], and s² has about (tr K)²/tr K² degrees of freedom, K the covariance of the distances from
/// the mean (Box 1954, as <see cref="CurveAnova"/>). Assumes normal values of one variance. Unit: the squared one of the
/// values; only ratios are used. Error: relative 1e-12 of exact sums (fixtures/oracles/persistence.R). Source: Bayley and
/// Hammersley 1946, Supplement to the Journal of the Royal Statistical Society 8, 184 (from memory).
/// </remarks>
internal sealed class SerialCovariance
{
    private readonly double[] _lags;

    /// <param name="lags">Covariance of values 0, 1, … n − 1 steps apart; the first is the variance.</param>
    /// <exception cref="ArgumentException">No value, one that is not finite, or no variance.</exception>
    public SerialCovariance(ReadOnlySpan<double> lags)
    {
        FiniteValues.Require(lags, 1, nameof(lags));
        if (!(lags[0] > 0))
        {
            throw new ArgumentException("A variance is positive.", nameof(lags));
        }

        _lags = lags.ToArray();
        double sum = Count * _lags[0];
        for (int l = 1; l < Count; l++)
        {
            sum += 2 * (Count - l) * _lags[l];
        }

        VarianceOfMean = sum / Count / Count;
    }

    /// <summary>n, how many values.</summary>
    public int Count => _lags.Length;

    /// <summary>Covariance of values so many steps apart.</summary>
    public double Lag(int steps) => _lags[steps];

    /// <summary>Variance of the mean of all values.</summary>
    public double VarianceOfMean { get; }

    /// <summary>
    /// What the sample variance is to be expected as: too little, where values go together. 0 for a single value.
    /// </summary>
    public double SampleVariance => Count > 1 ? (double)Count / (Count - 1) * (_lags[0] - VarianceOfMean) : 0;

    /// <summary>How many independent values have a mean as well known: n where values are independent.</summary>
    public double Worth => _lags[0] / VarianceOfMean;

    /// <summary>Correlation of one value with the next.</summary>
    public double Lag1 => Count > 1 ? _lags[1] / _lags[0] : 0;

    /// <summary>Degrees of freedom of the sample variance: n − 1 where values are independent. Takes n² steps.</summary>
    public double DegreesOfFreedom()
    {
        double squares = Count * _lags[0] * _lags[0], rows = 0;
        for (int l = 1; l < Count; l++)
        {
            squares += 2 * (Count - l) * _lags[l] * _lags[l];
        }

        for (int i = 0; i < Count; i++)
        {
            double row = 0;
            for (int j = 0; j < Count; j++)
            {
                row += _lags[Math.Abs(i - j)];
            }

            rows += row * row;
        }

        double trace = Count * (_lags[0] - VarianceOfMean);
        return trace * trace / (squares - (2 * rows / Count) + (Count * Count * VarianceOfMean * VarianceOfMean));
    }
}
