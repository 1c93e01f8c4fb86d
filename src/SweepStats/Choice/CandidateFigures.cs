using SweepStats.Bands;
using SweepStats.Lots;
using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Choice;

/// <summary>Mean shielding of each specimen over a band, as candidates that share reference and floor.</summary>
/// <remarks>
/// The errors of reference and stated errors are those of all specimens alike and drop out of differences. The floor's error is
/// magnified near the floor, for each specimen by its own measure. A specimen's scatter never counts for less than what is usual
/// among all: with own scatters of three placements each, 25 alike candidates are hardly ever told apart, with the usual one
/// alone the best is left out in up to 18 % where it scatters three times as much as the others. Repeats that go together in the
/// order taken count for what they are worth.
/// </remarks>
internal static class CandidateFigures
{
    /// <summary>The candidates with the standard deviation of one repeat; null where nothing repeats.</summary>
    /// <param name="specimens">The candidates, sweep by sweep.</param>
    /// <param name="curves">Their shielding, in the same order.</param>
    /// <param name="weights">One a frequency.</param>
    /// <param name="byPlacement">Repeats are placements, else sweeps.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static CandidateFigure[] Of(IReadOnlyList<SpecimenSweeps> specimens, IReadOnlyList<ShieldingCurve> curves,
        double[] weights, bool byPlacement, int threads = 1)
    {
        double[][] units = SideBySide.Of(
            specimens.Count, threads, i => specimens[i].Repeats(specimens[i].Sums(weights), byPlacement));
        // Bounds alone do not scatter, however often they repeat.
        bool[] scatters =
            [.. specimens.Select((s, i) =>
                units[i].Length > 1 && Enumerable.Range(0, weights.Length).Any(f => weights[f] > 0 && !s.Bounds[f]))];
        double[] squares = [.. units.Select((u, i) => scatters[i] ? Math.Pow(Sample.StandardDeviation(u), 2) : double.NaN)];
        bool[] open =
            [.. specimens.Select(s => Enumerable.Range(0, weights.Length).Any(f => weights[f] > 0 && s.Bounds[f]))];
        // A specimen placed once among others that were placed several times has one repeat, and is taken to be placed as they
        // were.
        RepeatWorth?[] worths = [.. units.Select((u, i) => u.Length > 1 ? curves[i].Spread?.CoveredWorth : null)];
        double[] freedoms = [.. units.Select((u, i) => worths[i]?.FigureDegreesOfFreedom ?? u.Length - 1)];
        double most = worths.Max(w => w?.FigureFactor ?? 1);
        (double usual, double freedom) = Usual(squares, freedoms, open);
        return SideBySide.Of(specimens.Count, threads, i =>
        {
            SpecimenSweeps s = specimens[i];
            bool own = squares[i] > usual;
            double square = own ? squares[i] : usual;
            double error = freedom > 0 ? Math.Sqrt((worths[i]?.FigureFactor ?? most) * square / units[i].Length) : 0;
            double value = LogWeights.Mean(weights, s.Values);
            var mean = new CandidateMean(value, error, own ? freedoms[i] : Math.Max(freedom, 1), open[i])
            {
                CommonScatter = !own,
                Shared = LogWeights.Mean(weights, f => s.Bounds[f] ? 0 : curves[i].Spread?.FloorShift(f) ?? 0),
                Shift = LogWeights.Mean(weights, f => s.Bounds[f] ? 0 : curves[i].Spread?.AveragingShift(f) ?? 0),
            };
            return new CandidateFigure(mean, freedom > 0 ? Math.Sqrt(square) : null);
        });
    }

    // Bounds do not scatter as values do: they tell the usual scatter only where nothing else does.
    private static (double Square, double Freedom) Usual(double[] squares, double[] freedoms, bool[] open)
    {
        int[] known = [.. Enumerable.Range(0, squares.Length).Where(i => !double.IsNaN(squares[i]))];
        bool anyClear = Array.Exists(known, i => !open[i]);
        int[] telling = [.. known.Where(i => !(anyClear && open[i]))];
        double freedom = telling.Sum(i => freedoms[i]);
        return (freedom > 0 ? telling.Sum(i => freedoms[i] * squares[i]) / freedom : 0, freedom);
    }
}
