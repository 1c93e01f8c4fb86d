using System.Numerics;

namespace SweepStats.Statistics;

/// <summary>The lowest and the highest of some numbers, in their unit.</summary>
/// <param name="Lowest">Positive infinity of none.</param>
/// <param name="Highest">Negative infinity of none.</param>
internal readonly record struct Extremes(double Lowest, double Highest)
{
    /// <summary>Of numbers none of which is NaN.</summary>
    public static Extremes Of(ReadOnlySpan<double> values)
    {
        int lanes = Vector<double>.Count, whole = values.Length - (values.Length % lanes);
        Vector<double> low = new(double.PositiveInfinity), high = new(double.NegativeInfinity);
        for (int i = 0; i < whole; i += lanes)
        {
            Vector<double> here = new(values[i..]);
            low = Vector.MinNative(low, here);
            high = Vector.MaxNative(high, here);
        }

        (double lowest, double highest) = (double.PositiveInfinity, double.NegativeInfinity);
        for (int lane = 0; lane < lanes; lane++)
        {
            (lowest, highest) = (Math.Min(lowest, low[lane]), Math.Max(highest, high[lane]));
        }

        for (int i = whole; i < values.Length; i++)
        {
            (lowest, highest) = (Math.Min(lowest, values[i]), Math.Max(highest, values[i]));
        }

        return new Extremes(lowest, highest);
    }
}
