using OxyPlot.Axes;
using SweepStats.Report.Text;

namespace SweepStats.Report.Drawing;

/// <summary>An axis of round steps of any size, with the frame on a step: for numbers whose unit is the user's own.</summary>
internal static class RoundScale
{
    private const int MostSteps = 9;
    private const double Room = 0.04;
    private static readonly double[] Steps = [1, 2, 5, 10, 20, 50];

    /// <summary>An axis that holds all values; values that are not finite do not count.</summary>
    public static LinearAxis Axis(AxisPosition position, string title, IEnumerable<double> values)
    {
        double[] seen = [.. values.Where(double.IsFinite).DefaultIfEmpty(0)];
        (double low, double high) = (seen.Min(), seen.Max());
        double span = high > low ? high - low : Math.Max(1, Math.Abs(high));
        (low, high) = (low - (Room * span), high + (Room * span));
        double decade = Math.Pow(10, Math.Floor(Math.Log10(span)) - 1);
        double step = Steps.Select(s => s * decade).First(s => (high - low) / s <= MostSteps);
        var axis = new LinearAxis
        {
            Title = title,
            Position = position,
            Minimum = position == AxisPosition.Left ? Math.Floor(low / step) * step : low,
            Maximum = position == AxisPosition.Left ? Math.Ceiling(high / step) * step : high,
            MajorStep = step,
            MinorTickSize = 0,
            LabelFormatter = Printed.Plain,
        };
        Frame.Dress(axis);
        return axis;
    }
}
