using MathNet.Numerics.Distributions;
using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>A normal error.</summary>
public sealed record NormalSpread : Spread
{
    private readonly double _deviation;

    /// <param name="standardDeviation">Standard deviation, not negative.</param>
    public NormalSpread(double standardDeviation) => _deviation = Width(standardDeviation, nameof(standardDeviation));

    /// <inheritdoc/>
    public override double StandardUncertainty => _deviation;

    /// <inheritdoc/>
    public override double Limit => double.PositiveInfinity;

    /// <inheritdoc/>
    public override double Below(double error) => _deviation == 0 ? (error < 0 ? 0 : 1) : Normal.CDF(0, 1, error / _deviation);

    /// <inheritdoc/>
    public override double Draw(RandomSource random) => _deviation * random.Normal();
}

/// <summary>The error of a mean of few readings: Student's t, scaled.</summary>
public sealed record StudentSpread : Spread
{
    private readonly double _scale;
    private readonly double _freedom;

    /// <param name="scale">Standard error of the mean.</param>
    /// <param name="degreesOfFreedom">Its degrees of freedom, positive.</param>
    public StudentSpread(double scale, double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(degreesOfFreedom);
        (_scale, _freedom) = (Width(scale, nameof(scale)), degreesOfFreedom);
    }

    /// <inheritdoc/>
    public override double StandardUncertainty => _scale;

    /// <inheritdoc/>
    public override double DegreesOfFreedom => _freedom;

    /// <inheritdoc/>
    public override double Limit => double.PositiveInfinity;

    /// <inheritdoc/>
    public override double Below(double error) =>
        _scale == 0 ? (error < 0 ? 0 : 1) : 1 - Statistics.StudentT.UpperTail(error / _scale, _freedom);

    /// <inheritdoc/>
    public override double Draw(RandomSource random) =>
        _scale * random.Normal() * (double.IsFinite(_freedom) ? Math.Sqrt(_freedom / 2 / random.Gamma(_freedom / 2)) : 1);
}

/// <summary>
/// Anywhere within limits alike; where the limits are themselves known only to within an edge, the corners are rounded off.
/// </summary>
/// <remarks>
/// With an edge d the standard uncertainty is √(a²/3 + d²/9): JCGM 101:2008, 6.4.3 (a rectangle with inexactly prescribed
/// limits).
/// </remarks>
public sealed record RectangularSpread : Spread
{
    private readonly double _half;
    private readonly double _edge;

    /// <param name="halfWidth">Half-width a, not negative.</param>
    /// <param name="edge">How far each limit may lie from its place, at most the half-width.</param>
    public RectangularSpread(double halfWidth, double edge = 0)
    {
        (_half, _edge) = (Width(halfWidth, nameof(halfWidth)), Width(edge, nameof(edge)));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(edge, halfWidth);
    }

    /// <inheritdoc/>
    public override double StandardUncertainty => Math.Sqrt((_half * _half / 3) + (_edge * _edge / 9));

    /// <inheritdoc/>
    public override double Limit => _half + _edge;

    /// <inheritdoc/>
    public override double Below(double error)
    {
        if (_half == 0)
        {
            return error < 0 ? 0 : 1;
        }

        double away = Math.Abs(error);
        double upper = away >= Limit ? 1 : away <= _half - _edge || _edge == 0 ? 0.5 + Flat(Math.Min(away, _half))
            : 1 - Corner(away);
        return error < 0 ? 1 - upper : upper;
    }

    /// <inheritdoc/>
    public override double Draw(RandomSource random)
    {
        // Both limits move together, so that the middle stays: JCGM 101:2008, 6.4.3.4.
        double half = _edge == 0 ? _half : _half + (_edge * ((2 * random.Uniform()) - 1));
        return half * ((2 * random.Uniform()) - 1);
    }

    // The density within is ln[(a + d)/(a − d)]/4d, and 1/2a where the limits are exact.
    private double Flat(double away) => _edge == 0 ? away / (2 * _half) : away * Logarithm(_half - _edge) / (4 * _edge);

    // Beyond a − d the density is ln[(a + d)/|x|]/4d; integrated from x to a + d.
    private double Corner(double away) => (Limit - away - (away * Math.Log(Limit / away))) / (4 * _edge);

    private double Logarithm(double at) => Math.Log(Limit / Math.Max(at, double.Epsilon));
}

/// <summary>Most likely in the middle, flat on top or pointed: the sum of two rectangular errors.</summary>
/// <remarks>Standard uncertainty a·√((1 + β²)/6), β the top's share of the base: JCGM 100:2008, 4.3.9.</remarks>
public sealed record TrapezoidalSpread : Spread
{
    private readonly double _half;
    private readonly double _top;

    /// <param name="halfWidth">Half of the base, a.</param>
    /// <param name="topHalfWidth">Half of the flat top, at most the half-width; 0 for a triangle.</param>
    public TrapezoidalSpread(double halfWidth, double topHalfWidth)
    {
        (_half, _top) = (Width(halfWidth, nameof(halfWidth)), Width(topHalfWidth, nameof(topHalfWidth)));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(topHalfWidth, halfWidth);
    }

    /// <inheritdoc/>
    public override double StandardUncertainty => Math.Sqrt(((_half * _half) + (_top * _top)) / 6);

    /// <inheritdoc/>
    public override double Limit => _half;

    /// <inheritdoc/>
    public override double Below(double error)
    {
        if (_half == 0)
        {
            return error < 0 ? 0 : 1;
        }

        double away = Math.Min(Math.Abs(error), _half);
        double height = 1 / (_half + _top);
        double upper = away <= _top ? 0.5 + (height * away)
            : 1 - (height * (_half - away) * (_half - away) / (2 * (_half - _top)));
        return error < 0 ? 1 - upper : upper;
    }

    /// <inheritdoc/>
    public override double Draw(RandomSource random) =>
        ((_half + _top) / 2 * ((2 * random.Uniform()) - 1)) + ((_half - _top) / 2 * ((2 * random.Uniform()) - 1));
}

/// <summary>Most likely at the ends, as two voltages of unknown phase are: the sine of a random angle.</summary>
public sealed record ArcsineSpread : Spread
{
    private readonly double _half;

    /// <param name="halfWidth">Half-width, not negative.</param>
    public ArcsineSpread(double halfWidth) => _half = Width(halfWidth, nameof(halfWidth));

    /// <inheritdoc/>
    public override double StandardUncertainty => _half / Math.Sqrt(2);

    /// <inheritdoc/>
    public override double Limit => _half;

    /// <inheritdoc/>
    public override double Below(double error) =>
        _half == 0 ? (error < 0 ? 0 : 1) : 0.5 + (Math.Asin(Math.Clamp(error / _half, -1, 1)) / Math.PI);

    /// <inheritdoc/>
    public override double Draw(RandomSource random) => _half * Math.Sin(2 * Math.PI * random.Uniform());
}
