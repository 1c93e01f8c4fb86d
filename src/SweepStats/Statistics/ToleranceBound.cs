namespace SweepStats.Statistics;

/// <summary>A lower tolerance limit with the quantile that it is a limit of.</summary>
/// <param name="Quantile">Estimate of what a share of all lies above.</param>
/// <param name="Limit">Its lower limit.</param>
public readonly record struct ToleranceBound(double Quantile, double Limit)
{
    /// <summary>The limit where an error of all values alike, of which the sample shows nothing, comes on top.</summary>
    /// <remarks>
    /// The reaches of independent errors below their estimates are combined by the root of their squares. Source: Zou and Donner
    /// 2008, Statistics in Medicine 27, 1693, after Graybill and Wang 1980, Journal of the American Statistical Association 75,
    /// 869 (from memory). Size: fixtures of rehearsed lots, at most what is stated.
    /// </remarks>
    /// <param name="reach">How far the error may reach, one-sided, at the confidence of the limit.</param>
    public double Less(double reach) =>
        Limit > Quantile ? Limit - reach : Quantile - Math.Sqrt(((Quantile - Limit) * (Quantile - Limit)) + (reach * reach));
}
