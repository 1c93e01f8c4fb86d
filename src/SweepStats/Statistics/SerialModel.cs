namespace SweepStats.Statistics;

/// <summary>
/// How values taken one after the other go together: a part that fades by the same factor from each to the next, beside a part
/// that is each value's own.
/// </summary>
/// <remarks>Correlation of values l steps apart: share·ρ^l. Share 1 is an autoregressive process of the first order.</remarks>
/// <param name="Correlation">ρ of the lasting part from one value to the next, from 0 and below 1.</param>
/// <param name="Share">Share of the variance that lasts, 0 to 1.</param>
internal readonly record struct SerialModel(double Correlation, double Share)
{
    /// <summary>Correlation of values so many steps apart; 1 for none.</summary>
    public double At(int steps) => steps == 0 ? 1 : Share * Math.Pow(Correlation, steps);

    /// <summary>Covariance of so many values of variance 1.</summary>
    public SerialCovariance Of(int count)
    {
        var lags = new double[count];
        for (int l = 0; l < count; l++)
        {
            lags[l] = At(l);
        }

        return new SerialCovariance(lags);
    }

    /// <summary>Variance that each mode of values of variance 1 has.</summary>
    /// <param name="modes">Weights of the modes, each of length 1.</param>
    public double[] ModeVariances(double[][] modes)
    {
        var variances = new double[modes.Length];
        for (int k = 0; k < variances.Length; k++)
        {
            // v'Rv = 2·Σ vᵢ·aᵢ − 1 with aᵢ = vᵢ + ρ·aᵢ₋₁, since R is ρ to the power of the distance and v has length 1.
            double faded = 0, sum = 0;
            foreach (double v in modes[k])
            {
                faded = v + (Correlation * faded);
                sum += v * faded;
            }

            variances[k] = (Share * ((2 * sum) - 1)) + (1 - Share);
        }

        return variances;
    }
}
