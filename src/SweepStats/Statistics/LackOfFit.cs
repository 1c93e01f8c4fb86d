namespace SweepStats.Statistics;

/// <summary>Whether a straight line through pairs leaves out more than chance: by repeats at the same x, and by a bend.</summary>
/// <remarks>
/// Repeats: F = [(SS of the residuals − SS within)/(k − 2)] / [SS within/(n − k)] for k distinct x, where SS within is that of y
/// about the means at each x (pure
/// error). Bend: F of the squared term that is added to the line, on 1 and n − 3 degrees of freedom. Where both can be asked the
/// answer is twice the smaller
/// probability (Bonferroni): few repeats show nothing against many values, and a bend is what wear mostly does. Assumes
/// independent normal scatter of y of one
/// size. Source: Draper and Smith, Applied Regression Analysis, chapter 2 (from memory). Error: relative 1e-9 of a probability
/// (fixtures/oracles/lack-of-fit.R).
/// </remarks>
internal sealed record LackOfFit
{
    // Fewer values than this have a bend that repeats show better, or that nothing shows.
    private const int FewestValuesForBend = 4;

    // What is left of readings on an exact line is their rounding, which has no shape to be judged.
    private const double Rounding = 1e-13;

    private LackOfFit()
    {
    }

    /// <summary>Probability by the repeats; null where no x has two y, or fewer than three x differ.</summary>
    public required double? ByRepeats { get; init; }

    /// <summary>Probability by the squared term; null for fewer than four x that differ.</summary>
    public required double? ByBend { get; init; }

    /// <summary>Standard deviation of y about the means at each x; null without repeats.</summary>
    public required double? PureError { get; init; }

    /// <summary>Degrees of freedom of it: pairs less distinct x.</summary>
    public required int PureDegrees { get; init; }

    /// <summary>Probability of so much beside the line where it is straight; null where neither question can be asked.</summary>
    public double? Probability =>
        ByRepeats is { } repeats && ByBend is { } bend ? Math.Min(1, 2 * Math.Min(repeats, bend)) : ByRepeats ?? ByBend;

    /// <summary>Holds a line against its pairs.</summary>
    /// <exception cref="ArgumentException">Fewer than three pairs, a value that is not finite, numbers of x and y that differ, or
    /// an x that never changes.</exception>
    public static LackOfFit Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var line = RegressionLine.Of(x, y);
        double[] left = Residuals(line, x, y);
        double squares = Deviations.Product(left, left);
        (double within, int values) = Within(x, y);
        double size = 0;
        foreach (double value in y)
        {
            size = Math.Max(size, Math.Abs(value));
        }

        bool exact = squares <= y.Length * size * Rounding * size * Rounding;
        int pure = x.Length - values;
        return new LackOfFit
        {
            ByRepeats = pure < 1 || values < 3 ? null : exact ? 1
                : new VarianceRatio(Math.Max(0, squares - within), values - 2, within, pure).Probability,
            ByBend = values < FewestValuesForBend ? null : exact ? 1 : Bend(x, left, squares),
            PureError = pure < 1 ? null : Math.Sqrt(within / pure),
            PureDegrees = pure,
        };
    }

    private static double[] Residuals(RegressionLine line, ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        var left = new double[x.Length];
        for (int i = 0; i < left.Length; i++)
        {
            left[i] = y[i] - line.At(x[i]);
        }

        return left;
    }

    private static (double Squares, int Values) Within(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        double[][] groups = [.. x.ToArray().Zip(y.ToArray()).GroupBy(p => p.First, p => p.Second).Select(g => g.ToArray())];
        return (groups.Sum(g => Sample.SquaredDeviations(g, Sample.Mean(g))), groups.Length);
    }

    // The part of x² that no line follows, and how much of the residuals goes with it.
    private static double Bend(ReadOnlySpan<double> x, double[] left, double squares)
    {
        double[] dx = Deviations.FromMean(x);
        double[] bent = Deviations.FromMean([.. dx.Select(d => d * d)]);
        double along = Deviations.Product(dx, bent) / Deviations.Product(dx, dx);
        bent = [.. bent.Zip(dx, (b, d) => b - (along * d))];
        double with = Deviations.Product(bent, left);
        double taken = Math.Min(squares, with * with / Deviations.Product(bent, bent));
        return new VarianceRatio(taken, 1, squares - taken, left.Length - 3).Probability;
    }
}
