namespace SweepStats.Statistics;

/// <summary>Variances of nested groups by restricted maximum likelihood; groups may differ in size.</summary>
/// <remarks>
/// The likelihood is profiled over mean and residual and climbed in the logarithm of each variance ratio plus the sampling
/// variance of a group mean, in which it is close to a parabola: Newton's steps, kept from going down and from leaving the ratios
/// below 0. Where the likelihood falls from 0 on, the variance is 0. Assumes independent normal effects. Unit: squared unit of
/// the values. Error: relative 1e-7 of a variance (fixtures/oracles/nested.R, and published fits). Source: Patterson and Thompson
/// 1971, Biometrika 58, 545 (from memory).
/// </remarks>
public static class NestedReml
{
    private const int MostSteps = 60;
    private const double Flat = 1e-9;

    /// <summary>Estimates the variances.</summary>
    /// <param name="values">All values.</param>
    /// <param name="nesting">Their groups.</param>
    /// <exception cref="ArgumentException">Numbers differ, or two variances cannot be told apart.</exception>
    public static NestedComponents Of(ReadOnlySpan<double> values, Nesting nesting)
    {
        ArgumentNullException.ThrowIfNull(nesting);
        nesting.Require(values);
        return Of(NestedValues.Of(values, nesting), nesting);
    }

    /// <summary>The same of values that are reduced to the means of their groups.</summary>
    internal static NestedComponents Of(NestedValues values, Nesting nesting)
    {
        NestedVariances start = NestedAnova.Variances(values, nesting);
        if (!(start.Residual > 0))
        {
            // Nothing scatters within a group: the likelihood has no summit, and mean squares say all there is to say.
            return NestedAnova.Of(values, start, nesting);
        }

        var climb = new NestedClimb(new NestedData(values, nesting), nesting, start);
        NestedLikelihood summit = climb.Summit(MostSteps, Flat);
        return new NestedComponents
        {
            Variances = [.. climb.Ratios.Select(r => r * summit.Residual)],
            Residual = summit.Residual,
            Mean = summit.Mean,
            StandardError = Math.Sqrt(summit.Residual / summit.Precision),
        };
    }

    /// <summary>−2 log of the restricted likelihood of given variances: for comparing with other fits.</summary>
    /// <exception cref="ArgumentException">Numbers differ, or two variances cannot be told apart.</exception>
    public static double Criterion(ReadOnlySpan<double> values, Nesting nesting, NestedComponents at)
    {
        ArgumentNullException.ThrowIfNull(nesting);
        ArgumentNullException.ThrowIfNull(at);
        nesting.Require(values);
        return new NestedData(NestedValues.Of(values, nesting),
            nesting).At([.. at.Variances.Select(v => v / at.Residual)]).Criterion;
    }
}
