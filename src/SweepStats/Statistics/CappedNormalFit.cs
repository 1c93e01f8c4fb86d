namespace SweepStats.Statistics;

/// <summary>
/// Mean and scatter of a normal sample some of whose values lie above one bound: <see cref="CensoredGroups"/> in its quickest
/// case.
/// </summary>
/// <remarks>
/// Maximum likelihood in g = μ/σ and h = 1/σ about the mean of the values seen, where only their sum of squares counts. Newton's
/// steps, shortened by the decrement as for a self-concordant function, so that none overshoots. Source: Olsen 1978 for the one
/// summit; Boyd and Vandenberghe 2004, chapter 9.6, for the shortened steps (from memory). Error: relative 1e-9.
/// </remarks>
internal static class CappedNormalFit
{
    private const int MostSteps = 200;

    /// <summary>
    /// Fits at least two values seen, not all equal, and a number of values above the bound; scatter divided by the number of
    /// all.
    /// </summary>
    public static (double Mean, double Deviation) Of(ReadOnlySpan<double> seen, double bound, int capped)
    {
        double mean = Sample.Mean(seen), squares = 0, count = seen.Length, all = seen.Length + capped;
        foreach (double value in seen)
        {
            squares += (value - mean) * (value - mean);
        }

        double b = bound - mean;
        double h = 1 / Math.Sqrt((squares / count) + (capped / all * b * b));
        double g = capped / all * b * h;
        for (int step = 0; step < MostSteps; step++)
        {
            double z = g - (h * b), ratio = NormalTail.Ratio(z), weight = capped * ratio * (ratio + z);
            double slopeG = (capped * ratio) - (count * g);
            double slopeH = (count / h) - (h * squares) - (capped * ratio * b);
            double bendG = count + weight, bendH = (count / (h * h)) + squares + (weight * b * b), mixed = weight * b;
            double determinant = (bendG * bendH) - (mixed * mixed);
            double moveG = ((bendH * slopeG) + (mixed * slopeH)) / determinant;
            double moveH = ((bendG * slopeH) + (mixed * slopeG)) / determinant;
            double decrement = Math.Sqrt(Math.Max(0, (slopeG * moveG) + (slopeH * moveH)));
            double part = decrement > 0.25 ? 1 / (1 + decrement) : 1;
            (g, h) = (g + (part * moveG), h + (part * moveH));
            if (decrement < 1e-9)
            {
                break;
            }
        }

        return ((g / h) + mean, 1 / h);
    }
}
