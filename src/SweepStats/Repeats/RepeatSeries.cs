using SweepStats.Statistics;

namespace SweepStats.Repeats;

/// <summary>Repeats in the order in which they were taken, their levels as a whole apart from the rest. In dB.</summary>
/// <param name="Kind">What they are.</param>
/// <param name="Whole">Mean level of each over the frequencies: one column.</param>
/// <param name="Rest">What is left at each frequency.</param>
internal sealed record RepeatSeries(RepeatKind Kind, SerialRows Whole, SerialRows Rest)
{
    /// <summary>How many repeats.</summary>
    public int Count => Whole.Count;

    /// <param name="kind">What they are.</param>
    /// <param name="levels">Levels of each repeat at the frequencies that count, in the order taken.</param>
    public static RepeatSeries Of(RepeatKind kind, IReadOnlyList<double[]> levels)
    {
        double[] means = [.. levels.Select(row => Sample.Mean(row))];
        return new RepeatSeries(
            kind,
            new SerialRows([.. means.Select(m => new[] { m })]),
            new SerialRows([.. levels.Select((row, j) => Without(means[j], row))]));
    }

    private static double[] Without(double mean, double[] row)
    {
        double[] rest = [.. row];
        Deviations.Less(mean, rest);
        return rest;
    }
}
