using System.Globalization;
using OxyPlot.Axes;
using SweepStats.Sweeps;

namespace SweepStats.Report.Drawing;

/// <summary>
/// Chooses the frequency axis: logarithmic where the sweep spans more than eight to one, as shielding does; else linear.
/// </summary>
internal static class FrequencyScale
{
    private const double WideSpan = 8;

    /// <summary>The axis along the bottom: places in Hz, labels in the unit that suits the band.</summary>
    public static Axis Axis(FrequencyGrid grid)
    {
        double start = grid[0].Value;
        double stop = grid[^1].Value;
        if (IsLogarithmic(grid))
        {
            return Dressed(new LogFrequencyAxis(start, stop) { Title = "Frequency (logarithmic)" });
        }

        return Dressed(start == stop ? new OneFrequencyAxis(start) { Title = "Frequency" } : Linear(start, stop));
    }

    /// <summary>Whether the axis of a grid is logarithmic.</summary>
    public static bool IsLogarithmic(FrequencyGrid grid) => grid[0].Value > 0 && grid[^1].Value / grid[0].Value > WideSpan;

    private static LinearAxis Linear(double start, double stop)
    {
        (double size, string unit) = stop >= 1e9 ? (1e9, "GHz") : stop >= 1e6 ? (1e6, "MHz") : stop >= 1e3 ? (1e3, "kHz")
            : (1.0, "Hz");
        return new LinearAxis
        {
            Minimum = start,
            Maximum = stop,
            Title = $"Frequency ({unit})",
            LabelFormatter = hertz => (hertz / size).ToString("0.#########", CultureInfo.InvariantCulture),
        };
    }

    private static T Dressed<T>(T axis)
        where T : Axis
    {
        axis.Position = AxisPosition.Bottom;
        Frame.Dress(axis);
        return axis;
    }
}
