using OxyPlot.Axes;
using SweepStats.Report.Text;

namespace SweepStats.Report.Drawing;

/// <summary>An axis from zero for what cannot be negative: contributions and standard deviations, however small.</summary>
internal static class ZeroScale
{
    private const int MostSteps = 8;

    // Where nothing is above zero; a tenth of a decibel is small for all that is shown here.
    private const double Least = 0.1;
    private static readonly double[] Steps = [1, 2, 5, 10, 20, 50];

    /// <summary>An axis that holds a value; the frame is on a step.</summary>
    public static LinearAxis Axis(string title, double most)
    {
        double end = most > 0 ? most : Least;
        double decade = Math.Pow(10, Math.Floor(Math.Log10(end)) - 1);
        double step = Steps.Select(s => s * decade).First(s => end / s <= MostSteps);
        var axis = new LinearAxis
        {
            Title = title,
            Position = AxisPosition.Left,
            Minimum = 0,
            Maximum = Math.Ceiling(end / step) * step,
            MajorStep = step,
            MinorTickSize = 0,
            LabelFormatter = Printed.Plain,
        };
        Frame.Dress(axis);
        return axis;
    }
}
