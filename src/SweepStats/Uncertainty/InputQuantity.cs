namespace SweepStats.Uncertainty;

/// <summary>One quantity that a result is computed from. Immutable.</summary>
/// <param name="Name">Name for people.</param>
/// <param name="Estimate">Best estimate.</param>
/// <param name="Error">How the truth may lie about it.</param>
/// <param name="DegreesOfFreedom">
/// How well the standard uncertainty is known: effective degrees of freedom, infinite where it is known; null for those of the
/// spread.
/// </param>
public sealed record InputQuantity(string Name, double Estimate, Spread Error, double? DegreesOfFreedom = null)
{
    /// <summary>Standard uncertainty, in the unit of the quantity.</summary>
    public double StandardUncertainty => Error.StandardUncertainty;

    /// <summary>Effective degrees of freedom of the standard uncertainty.</summary>
    public double Freedom => DegreesOfFreedom ?? Error.DegreesOfFreedom;
}

/// <summary>A result as a function of its input quantities, in their order.</summary>
/// <param name="inputs">Value of each input.</param>
/// <returns>Value of the result.</returns>
public delegate double MeasurementModel(ReadOnlySpan<double> inputs);
