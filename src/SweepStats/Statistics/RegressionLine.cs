namespace SweepStats.Statistics;

/// <summary>The straight line of least squares through pairs, with the error of its slope and of the line itself.</summary>
/// <remarks>
/// Formula: slope b = Σ(x − x̄)(y − ȳ)/Σ(x − x̄)², u(b) = s/√Σ(x − x̄)², s² = Σ(y − a − bx)²/(n − 2); the line at x is
/// ȳ + b(x − x̄) with u² = s²/n + u(b)²(x − x̄)². Assumes independent normal scatter of y of one size everywhere and an x
/// without error. Source: JCGM 100:2008, H.3 (from memory). Error: checked against the certified NIST StRD set Norris
/// (fixtures/published/nist-strd-linear).
/// </remarks>
internal sealed record RegressionLine
{
    private double _meanX, _meanY, _meanUncertainty;

    private RegressionLine()
    {
    }

    /// <summary>Slope with its standard uncertainty.</summary>
    public required SlopeEstimate Slope { get; init; }

    /// <summary>Value of the line at x = 0, unit of y.</summary>
    public required double Intercept { get; init; }

    /// <summary>Standard uncertainty of the intercept.</summary>
    public required double InterceptUncertainty { get; init; }

    /// <summary>Standard deviation of y about the line.</summary>
    public required double ResidualDeviation { get; init; }

    /// <summary>Value of the line at x, unit of y.</summary>
    public double At(double x) => _meanY + (Slope.Value * (x - _meanX));

    /// <summary>Error of the line at x: of the mean of y there, not of a single y.</summary>
    public Contribution ErrorAt(double x)
    {
        double turned = Slope.Uncertainty * (x - _meanX);
        return new Contribution(Math.Sqrt((_meanUncertainty * _meanUncertainty) + (turned * turned)), Slope.DegreesOfFreedom);
    }

    /// <summary>Fits the line.</summary>
    /// <exception cref="ArgumentException">
    /// Fewer than three pairs, a value that is not finite, numbers of x and y that differ, or an x that never changes.
    /// </exception>
    public static RegressionLine Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        FiniteValues.RequirePairs(x, y, 3);
        (double mean, double level) = (Sample.Mean(x), Sample.Mean(y));
        double[] dx = Deviations.From(mean, x), dy = Deviations.From(level, y);
        double squares = Deviations.Product(dx, dx);
        if (!(squares > 0))
        {
            throw new ArgumentException("A slope needs an x that changes.", nameof(x));
        }

        double slope = Deviations.Product(dx, dy) / squares;
        double deviation = Math.Sqrt(Residuals(dx, dy, slope) / (x.Length - 2));
        return new RegressionLine
        {
            Slope = new SlopeEstimate(slope, deviation / Math.Sqrt(squares), x.Length - 2),
            Intercept = level - (slope * mean),
            InterceptUncertainty = deviation * Math.Sqrt((1.0 / x.Length) + (mean * mean / squares)),
            ResidualDeviation = deviation,
            _meanX = mean,
            _meanY = level,
            _meanUncertainty = deviation / Math.Sqrt(x.Length),
        };
    }

    private static double Residuals(double[] dx, double[] dy, double slope)
    {
        // Squares of the residuals themselves: the textbook difference of sums loses all digits where the line fits well.
        var squares = new CompensatedSum();
        for (int i = 0; i < dx.Length; i++)
        {
            double residual = dy[i] - (slope * dx[i]);
            squares.Add(residual * residual);
        }

        return squares.Value;
    }
}
