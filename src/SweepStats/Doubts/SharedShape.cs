using SweepStats.Statistics;

namespace SweepStats.Doubts;

/// <summary>Whether covered sweeps still show the shape of the reference over frequency, window by window.</summary>
/// <remarks>
/// Antennas, cables and rooms give the reference a shape that repeats from sweep to sweep, and the covered sweeps inherit it:
/// they resemble each other by r = A²/(A² + s²), A the reference's shape and s the covered scatter in dB. In noise s stays and
/// the resemblance goes. Where the shape is too small against the scatter nothing can be told. A straight line is taken out of
/// each window: shielding and floors slope.
/// </remarks>
internal sealed class SharedShape
{
    /// <summary>Fewest points that show a shape; the least half-width of a window too.</summary>
    public const int FewestPoints = 20;

    // Shapes of antennas and cables stretch over a good part of the band, however finely it was swept; windows overlap by nine
    // tenths.
    private const int HalfWidthsOfBand = 7;
    private const int StepsOfHalfWidth = 5;
    private const double TellableResemblance = 0.2;

    // One-sided, 99 %: the resemblance that may still hide behind chance.
    private const double UpperScore = 2.326;

    private readonly int _points;
    private readonly ImmutableArray<Window> _windows;
    private readonly ImmutableArray<double> _shapes;

    /// <param name="reference">Levels of the reference sweeps in dB, a row a sweep; the same for all specimens.</param>
    public SharedShape(double[][] reference)
    {
        _points = reference[0].Length;
        _windows = [.. Windows(_points)];
        var products = new StraightenedProducts(reference, _windows.Select(w => w.Seen));
        _shapes = [.. _windows.Select(w => products.In(w.Seen).SharedVariance)];
    }

    /// <summary>Points of a window to either side, for sweeps of this many points.</summary>
    public static int HalfWidth(int points) => Math.Max(FewestPoints, points / HalfWidthsOfBand);

    /// <summary>
    /// Marks the frequencies in whose window the covered sweeps show less than half the resemblance that the reference's shape
    /// would give them.
    /// </summary>
    /// <param name="covered">Levels of at least two sweeps in dB, a row a sweep.</param>
    public bool[] Lost(double[][] covered)
    {
        var lost = new bool[_points];
        var looks = new StraightenedProducts(covered, _windows.Select(w => w.Seen));
        for (int i = 0; i < _windows.Length; i++)
        {
            (Range seen, Range told) = _windows[i];
            if (IsLost(_shapes[i], looks.In(seen), covered[0].AsSpan(seen)))
            {
                lost.AsSpan(told).Fill(true);
            }
        }

        return lost;
    }

    private static IEnumerable<Window> Windows(int points)
    {
        int half = HalfWidth(points), step = half / StepsOfHalfWidth;
        for (int point = step / 2; point < points; point += step)
        {
            int first = point - (step / 2);
            yield return new Window(Math.Max(0, point - half)..Math.Min(points, point + half + 1),
                first..Math.Min(first + step, points));
        }
    }

    private static bool IsLost(double shape, StraightenedWindow looks, ReadOnlySpan<double> first)
    {
        double expected = shape / (shape + looks.Scatter);
        if (looks.Columns < FewestPoints || !(expected >= TellableResemblance))
        {
            return false;
        }

        PairwiseCorrelation alike = looks.Correlation();
        double independent = Independent(EvenLine.Of(first).Residuals(first));
        return Math.Tanh(alike.FisherMean + (UpperScore / Math.Sqrt(alike.Pairs * (independent - 3)))) < expected / 2;
    }

    // Two numbers go with the straight line; of neighbours that resemble each other by ρ fewer count: m(1 − ρ²)/(1 + ρ²).
    private static double Independent(double[] row)
    {
        double alike = Math.Clamp(Autocorrelation.Lag1(row), 0, 0.95);
        return Math.Max(5, (row.Length - 2) * (1 - (alike * alike)) / (1 + (alike * alike)));
    }

    private readonly record struct Window(Range Seen, Range Told);
}
