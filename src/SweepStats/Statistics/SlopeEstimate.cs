namespace SweepStats.Statistics;

/// <summary>A slope with its standard uncertainty.</summary>
/// <param name="Value">Slope, unit of y per unit of x.</param>
/// <param name="Uncertainty">Its standard uncertainty.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the uncertainty.</param>
internal readonly record struct SlopeEstimate(double Value, double Uncertainty, int DegreesOfFreedom)
{
    /// <summary>
    /// Probability of a slope at least as steep, up or down, where the true one is level; not a number where y has no scatter at
    /// all.
    /// </summary>
    public double Probability => 2 * StudentT.UpperTail(Math.Abs(Value) / Uncertainty, DegreesOfFreedom);

    /// <summary>Two-sided interval, b ± t·u(b).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level is <c>default</c>.</exception>
    public Interval Interval(Confidence confidence)
    {
        FiniteValues.RequireLevel(confidence.Level);
        double half = -StudentT.Quantile(1 - confidence.TwoSidedQuantile, DegreesOfFreedom) * Uncertainty;
        return new Interval(Value - half, Value + half);
    }
}
