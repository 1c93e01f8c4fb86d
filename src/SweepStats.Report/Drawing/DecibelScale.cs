using OxyPlot.Axes;
using SweepStats.Report.Text;

namespace SweepStats.Report.Drawing;

/// <summary>The dB axis: round steps, with the frame on a step.</summary>
internal static class DecibelScale
{
    private const int MostSteps = 9;
    private static readonly double[] Steps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500];

    /// <summary>An axis that holds all values with some room; values that are not finite do not count.</summary>
    /// <param name="title">What is measured, with its unit.</param>
    /// <param name="values">What must be seen.</param>
    /// <param name="roomAbove">Room for arrows and flags, as a share of the span.</param>
    /// <param name="leastSpan">
    /// Less than this is not spread over the whole axis: differences that do not matter would look as if they did.
    /// </param>
    public static LinearAxis Axis(string title, IEnumerable<double> values, double roomAbove = 0.06, double leastSpan = 2)
    {
        double[] seen = [.. values.Where(double.IsFinite)];
        double low = seen.Length == 0 ? 0 : seen.Min();
        double high = seen.Length == 0 ? 10 : seen.Max();
        double span = Math.Max(high - low, leastSpan);
        low -= 0.04 * span;
        high += roomAbove * span;
        double step = Steps.FirstOrDefault(s => (high - low) / s <= MostSteps,
            Math.Pow(10, Math.Ceiling(Math.Log10((high - low) / MostSteps))));
        var axis = new LinearAxis
        {
            Title = title,
            Position = AxisPosition.Left,
            Minimum = Math.Floor(low / step) * step,
            Maximum = Math.Ceiling(high / step) * step,
            MajorStep = step,
            MinorTickSize = 0,
            LabelFormatter = Printed.Plain,
        };
        Frame.Dress(axis);
        return axis;
    }
}
