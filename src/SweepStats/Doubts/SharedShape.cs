using SweepStats.Statistics;

namespace SweepStats.Doubts;

/// <summary>Whether covered sweeps still show the shape of the reference over frequency, window by window.</summary>
/// <remarks>
/// Antennas, cables and rooms give the reference a shape that repeats from sweep to sweep, and the covered sweeps inherit it: they resemble each other by
/// r = A²/(A² + s²), A the reference's shape and s the covered scatter in dB. In noise s stays and the resemblance goes. Where the shape is too small against
/// the scatter nothing can be told. A straight line is taken out of each window: shielding and floors slope.
/// </remarks>
internal static class SharedShape
{
    /// <summary>Fewest points that show a shape; the least half-width of a window too.</summary>
    public const int FewestPoints = 20;

    // Shapes of antennas and cables stretch over a good part of the band, however finely it was swept; windows overlap by nine tenths.
    private const int HalfWidthsOfBand = 7;
    private const int StepsOfHalfWidth = 5;
    private const double TellableResemblance = 0.2;

    // One-sided, 99 %: the resemblance that may still hide behind chance.
    private const double UpperScore = 2.326;

    /// <summary>Points of a window to either side, for sweeps of this many points.</summary>
    public static int HalfWidth(int points) => Math.Max(FewestPoints, points / HalfWidthsOfBand);

    /// <summary>Marks the frequencies in whose window the covered sweeps show less than half the resemblance that the reference's shape would give them.</summary>
    public static bool[] Lost(double[][] reference, double[][] covered)
    {
        var lost = new bool[reference[0].Length];
        int half = HalfWidth(lost.Length);
        int step = half / StepsOfHalfWidth;
        for (int point = step / 2; point < lost.Length; point += step)
        {
            if (IsLost(reference, covered, Math.Max(0, point - half)..Math.Min(lost.Length, point + half + 1)))
            {
                lost.AsSpan(point - (step / 2), Math.Min(step, lost.Length - point + (step / 2))).Fill(true);
            }
        }

        return lost;
    }

    private static bool IsLost(double[][] reference, double[][] covered, Range window)
    {
        double[][] shapes = [.. reference.Select(s => Straightened(s[window]))];
        double[][] looks = [.. covered.Select(s => Straightened(s[window]))];
        if (looks[0].Length < FewestPoints)
        {
            return false;
        }

        double shape = SharedVariance(shapes);
        double scatter = Math.Max(0, looks.Average(r => Deviations.Product(r, r) / r.Length) - SharedVariance(looks));
        double expected = shape / (shape + scatter);
        if (!(expected >= TellableResemblance))
        {
            return false;
        }

        var alike = PairwiseCorrelation.Of(looks);
        return Math.Tanh(alike.FisherMean + (UpperScore / Math.Sqrt(alike.Pairs * (Independent(looks) - 3)))) < expected / 2;
    }

    // Two numbers go with the straight line; of neighbours that resemble each other by ρ fewer count: m(1 − ρ²)/(1 + ρ²).
    private static double Independent(double[][] rows)
    {
        double alike = Math.Clamp(Autocorrelation.Lag1(rows[0]), 0, 0.95);
        return Math.Max(5, (rows[0].Length - 2) * (1 - (alike * alike)) / (1 + (alike * alike)));
    }

    private static double[] Straightened(double[] row)
    {
        if (row.Length < 3)
        {
            return row;
        }

        double[] place = [.. Enumerable.Range(0, row.Length).Select(i => (double)i)];
        RegressionLine line = RegressionLine.Of(place, row);
        return [.. row.Select((level, i) => level - line.Intercept - (line.Slope.Value * i))];
    }

    // Mean product of different sweeps: their own scatter drops out.
    private static double SharedVariance(double[][] rows)
    {
        if (rows.Length < 2)
        {
            return Deviations.Product(rows[0], rows[0]) / rows[0].Length;
        }

        double sum = 0;
        for (int j = 1; j < rows.Length; j++)
        {
            for (int i = 0; i < j; i++)
            {
                sum += Deviations.Product(rows[i], rows[j]) / rows[0].Length;
            }
        }

        return Math.Max(0, sum / (rows.Length * (rows.Length - 1) / 2));
    }
}
