using SweepStats.Statistics;

namespace SweepStats.Trends;

/// <summary>The straight line of the shielding over the ordered factor, by the scatter of specimens. Immutable.</summary>
/// <remarks>
/// The specimen is the independent unit. What all specimens share (reference, floor, stated errors) moves all alike and is not in
/// the slope; in the level of the line
/// it is, and stands beside it where the line is held against a requirement.
/// </remarks>
public sealed record TrendLine
{
    private readonly RegressionLine _line;

    internal TrendLine(RegressionLine line, double? straight, Confidence confidence)
    {
        (_line, StraightProbability) = (line, straight);
        SlopeIntervalDb = line.Slope.Interval(confidence);
    }

    /// <summary>Change of the shielding for each unit of the factor, in dB; negative where it falls.</summary>
    public double SlopeDb => _line.Slope.Value;

    /// <summary>Two-sided interval of the slope, Student's t.</summary>
    public Interval SlopeIntervalDb { get; }

    /// <summary>Standard deviation of specimens about the line in dB.</summary>
    public double ResidualDb => _line.ResidualDeviation;

    /// <summary>Specimens less two.</summary>
    public int DegreesOfFreedom => _line.Slope.DegreesOfFreedom;

    /// <summary>Probability of so much beside the line where it is straight; null where nothing tells.</summary>
    public double? StraightProbability { get; }

    /// <summary>The line at a value of the factor, in dB.</summary>
    public double At(double value) => _line.At(value);

    /// <summary>
    /// Two-sided interval of the line at a value by the scatter of specimens alone: of the mean there, not of a specimen, and
    /// without what all share.
    /// </summary>
    public Interval IntervalAt(double value, Confidence confidence)
    {
        Contribution error = _line.ErrorAt(value);
        double reach = error.StandardUncertainty * StudentQuantile.Of(confidence.TwoSidedQuantile).At(error.DegreesOfFreedom);
        return new Interval(At(value) - reach, At(value) + reach);
    }
}
