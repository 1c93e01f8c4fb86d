using SweepStats.Statistics;

namespace SweepStats.Trends;

/// <summary>Scatter of single specimens, everywhere and near each measured value. Unit: dB.</summary>
/// <remarks>
/// Where wear makes specimens less alike the scatter of all is too small at the far end. A mean therefore reaches as far as the
/// larger of both asks. Near a value are its own specimens and those at the values next to it, to both sides alike, until there
/// are four degrees of freedom: fewer would tell little and cost much. Common practice, no source.
/// </remarks>
/// <param name="Everywhere">Of all specimens.</param>
/// <param name="Near">Near each value; none where nothing shows it.</param>
internal sealed record GroupScatter(Contribution Everywhere, ImmutableArray<Contribution?> Near)
{
    private const double EnoughDegrees = 4;

    /// <summary>How far a mean of specimens at a value reaches by the larger of both.</summary>
    /// <param name="group">Place of the value.</param>
    /// <param name="reach">How far a mean reaches by a scatter of single specimens.</param>
    public double Reach(int group, Func<Contribution, double> reach) =>
        Near[group] is { } near ? Math.Max(reach(Everywhere), reach(near)) : reach(Everywhere);

    /// <summary>Pooled scatter near each value.</summary>
    /// <param name="squares">Squares about the means or the line at each value.</param>
    /// <param name="degrees">Degrees of freedom of them.</param>
    public static ImmutableArray<Contribution?> Pooled(double[] squares, double[] degrees) =>
        [.. Enumerable.Range(0, squares.Length).Select(g => Pooled(squares, degrees, g))];

    private static Contribution? Pooled(double[] squares, double[] degrees, int group)
    {
        for (int width = 0; ; width++)
        {
            Range near = Math.Max(0, group - width)..Math.Min(squares.Length, group + width + 1);
            double freedom = degrees[near].Sum();
            if (freedom >= EnoughDegrees || near.Equals(0..squares.Length))
            {
                return freedom > 0 ? new Contribution(Math.Sqrt(squares[near].Sum() / freedom), freedom) : null;
            }
        }
    }
}
