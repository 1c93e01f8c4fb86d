using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Doubts;

/// <summary>Whether covered sweeps still show the shape of the reference over frequency, window by window.</summary>
/// <remarks>
/// Antennas, cables and rooms give the reference a shape that repeats from sweep to sweep, and the covered sweeps inherit it: they resemble each other by
/// r = A²/(A² + s²), A the reference's shape and s the covered scatter in dB. In noise s stays and the resemblance goes. Where the shape is too small against
/// the scatter nothing can be told. A straight line is taken out of each window: shielding and floors slope.
/// </remarks>
internal sealed class SharedShape
{
    /// <summary>Fewest points that show a shape; the least half-width of a window too.</summary>
    public const int FewestPoints = 20;

    // Shapes of antennas and cables stretch over a good part of the band, however finely it was swept; windows overlap by nine tenths.
    private const int HalfWidthsOfBand = 7;
    private const int StepsOfHalfWidth = 5;
    private const double TellableResemblance = 0.2;

    // One-sided, 99 %: the resemblance that may still hide behind chance.
    private const double UpperScore = 2.326;

    private readonly int _points;
    private readonly ImmutableArray<ReferenceWindow> _windows;

    /// <param name="reference">Levels of the reference sweeps in dB, a row a sweep; the same for all specimens.</param>
    public SharedShape(double[][] reference)
    {
        _points = reference[0].Length;
        int half = HalfWidth(_points);
        int step = half / StepsOfHalfWidth;
        var windows = ImmutableArray.CreateBuilder<ReferenceWindow>();
        for (int point = step / 2; point < _points; point += step)
        {
            int first = point - (step / 2);
            Range seen = Math.Max(0, point - half)..Math.Min(_points, point + half + 1);
            windows.Add(new ReferenceWindow(seen, first..Math.Min(first + step, _points), new StraightenedRows(reference, seen).SharedVariance));
        }

        _windows = windows.ToImmutable();
    }

    /// <summary>Points of a window to either side, for sweeps of this many points.</summary>
    public static int HalfWidth(int points) => Math.Max(FewestPoints, points / HalfWidthsOfBand);

    /// <summary>Marks the frequencies in whose window the covered sweeps show less than half the resemblance that the reference's shape would give them.</summary>
    public bool[] Lost(double[][] covered)
    {
        var lost = new bool[_points];
        var scatter = new RunningScatter(covered);
        foreach (ReferenceWindow window in _windows)
        {
            if (!IsPlainlyTooSmall(window, scatter) && IsLost(window.SharedVariance, new StraightenedRows(covered, window.Seen)))
            {
                lost.AsSpan(window.Told).Fill(true);
            }
        }

        return lost;
    }

    // Most windows of a reference without much shape are told without going through them. Half of what can be told leaves rounding no say.
    private static bool IsPlainlyTooSmall(ReferenceWindow window, RunningScatter covered)
    {
        double scatter = window.Seen.End.Value - window.Seen.Start.Value < FewestPoints ? 0 : covered.In(window.Seen);
        return scatter > RunningScatter.Tellable && window.SharedVariance < TellableResemblance / 2 * (window.SharedVariance + scatter);
    }

    private static bool IsLost(double shape, StraightenedRows looks)
    {
        if (looks.Columns < FewestPoints)
        {
            return false;
        }

        double scatter = Math.Max(0, looks.MeanSquare - looks.SharedVariance);
        double expected = shape / (shape + scatter);
        if (!(expected >= TellableResemblance))
        {
            return false;
        }

        var alike = PairwiseCorrelation.Of(looks.Rows);
        return Math.Tanh(alike.FisherMean + (UpperScore / Math.Sqrt(alike.Pairs * (Independent(looks.Rows) - 3)))) < expected / 2;
    }

    // Two numbers go with the straight line; of neighbours that resemble each other by ρ fewer count: m(1 − ρ²)/(1 + ρ²).
    private static double Independent(double[][] rows)
    {
        double alike = Math.Clamp(Autocorrelation.Lag1(rows[0]), 0, 0.95);
        return Math.Max(5, (rows[0].Length - 2) * (1 - (alike * alike)) / (1 + (alike * alike)));
    }

    private readonly record struct ReferenceWindow(Range Seen, Range Told, double SharedVariance);
}
