using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>A result by propagation of whole distributions. Immutable.</summary>
/// <remarks>
/// Trials are drawn in blocks of max(10⁴, 100/(1 − p)) until twice the standard error over blocks of the mean, the standard
/// uncertainty and both ends lies below half a unit of the last digit asked of the standard uncertainty. Correlated inputs must
/// be normal. A result may be infinite in some trials: an end of an interval is then infinite where more trials are than may lie
/// beyond it. Source: JCGM 101:2008, 5 to 7, 7.9.
/// </remarks>
public sealed record MonteCarlo
{
    private const int FewestInBlock = 10_000;

    private MonteCarlo()
    {
    }

    /// <summary>Mean of the result; not a number where some trials are infinite.</summary>
    public required double Estimate { get; init; }

    /// <summary>Standard deviation of the result; not a number where some trials are infinite.</summary>
    public required double StandardUncertainty { get; init; }

    /// <summary>Interval with as much probability below as above.</summary>
    public required Interval Symmetric { get; init; }

    /// <summary>Shortest interval.</summary>
    public required Interval Shortest { get; init; }

    /// <summary>Share of trials whose result is +∞, 0 to 1.</summary>
    public required double OpenShare { get; init; }

    /// <summary>Trials drawn.</summary>
    public required int Trials { get; init; }

    /// <summary>Whether the figures stand still to the digits asked.</summary>
    public required bool Stable { get; init; }

    /// <summary>
    /// Half a unit of the last digit asked of the standard uncertainty, or what was asked of the ends: the tolerance of the
    /// figures.
    /// </summary>
    public required double Tolerance { get; init; }

    /// <summary>
    /// Whether the interval of a linear budget agrees with this one at both ends to within the tolerance. Source: JCGM 101:2008,
    /// 8.1.
    /// </summary>
    /// <param name="linear">Interval of the linear budget, of the same level.</param>
    public bool Confirms(Interval linear) => Confirms(linear, Tolerance);

    /// <summary>
    /// The same with a tolerance of its own, which should be five times that of the figures. Source: JCGM 101:2008, 8.2.
    /// </summary>
    /// <param name="linear">Interval of the linear budget, of the same level.</param>
    /// <param name="tolerance">How far the ends may lie apart.</param>
    public bool Confirms(Interval linear, double tolerance) =>
        Math.Abs(linear.Low - Symmetric.Low) <= tolerance && Math.Abs(linear.High - Symmetric.High) <= tolerance;

    /// <summary>Draws the result.</summary>
    /// <exception cref="ArgumentException">
    /// No input; correlations that do not fit, contradict each other, or are stated for errors that are not normal.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">Digits other than 1 or 2.</exception>
    public static MonteCarlo Of(MeasurementModel model, IReadOnlyList<InputQuantity> inputs, MonteCarloPlan plan,
        double[][]? correlation = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentOutOfRangeException.ThrowIfLessThan(plan.Digits, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(plan.Digits, 2);
        Correlations.Require(inputs, correlation);
        var drawn = new Trials(model, inputs, correlation, plan.Seed);
        int block = Math.Max(FewestInBlock, (int)Math.Ceiling(100 / (1 - plan.Confidence.Level)));
        List<BlockFigures> blocks = [];
        bool stable = false;
        double tolerance = 0;
        while (!stable && (blocks.Count + 1) * block <= Math.Max(plan.MostTrials, 2 * block))
        {
            blocks.Add(BlockFigures.Of(drawn.Next(block), plan.Confidence));
            double uncertainty = Math.Sqrt(blocks.Average(b => b.Deviation * b.Deviation));
            tolerance = plan.EndTolerance ?? HalfUnit(uncertainty, plan.Digits);
            stable = blocks.Count > 1 && BlockFigures.Spread(blocks, plan.EndTolerance is not null) <= tolerance;
        }

        return Summary(drawn.All, plan, stable, tolerance);
    }

    /// <summary>Half a unit of the last of so many significant digits. Source: JCGM 101:2008, 7.9.2.</summary>
    internal static double HalfUnit(double uncertainty, int digits) =>
        uncertainty > 0 ? Math.Pow(10, Math.Floor(Math.Log10(uncertainty)) - digits + 1) / 2 : 0;

    private static MonteCarlo Summary(double[] values, MonteCarloPlan plan, bool stable, double tolerance)
    {
        bool finite = Array.TrueForAll(values, double.IsFinite);
        double mean = finite ? Sample.Mean(values) : double.NaN;
        double deviation = finite ? Sample.StandardDeviation(values) : double.NaN;
        Ascending.Sort(values);
        return new MonteCarlo
        {
            Estimate = mean,
            StandardUncertainty = deviation,
            Symmetric = CoverageIntervals.Symmetric(values, plan.Confidence),
            Shortest = CoverageIntervals.Shortest(values, plan.Confidence),
            OpenShare = values.Count(double.IsPositiveInfinity) / (double)values.Length,
            Trials = values.Length,
            Stable = stable || deviation == 0,
            Tolerance = tolerance,
        };
    }
}
