using OxyPlot;

namespace SweepStats.Report.Drawing;

/// <summary>Colours of a heat map: blue below the other sweeps, white level with them, red above.</summary>
internal sealed class HeatScale
{
    /// <summary>Shades on either side of white: as many as an eye tells apart.</summary>
    public const int Shades = 10;

    private const double Typical = 0.99;
    private static readonly double[] Limits = [0.5, 1, 1.5, 2, 3, 4, 5, 7, 10, 15, 20, 30, 50, 100, 200, 500];

    /// <param name="values">All values of the map.</param>
    public HeatScale(IEnumerable<double> values)
    {
        double[] sizes = [.. values.Select(Math.Abs).Order()];
        // One spike must not turn all else white: the farthest hundredth may lie beyond the scale.
        double needed = sizes[(int)(Typical * (sizes.Length - 1))];
        LimitDb = Limits.FirstOrDefault(l => l >= needed, Limits[^1]);
        IsExceeded = sizes[^1] > LimitDb;
    }

    /// <summary>Value in dB from which on the colour no longer changes.</summary>
    public double LimitDb { get; }

    /// <summary>Whether a value lies beyond.</summary>
    public bool IsExceeded { get; }

    /// <summary>Shade of a value, from −<see cref="Shades"/> to <see cref="Shades"/>.</summary>
    public int Shade(double value) => (int)Math.Clamp(Math.Round(value / LimitDb * Shades), -Shades, Shades);

    /// <summary>Colour of a shade.</summary>
    public static OxyColor Colour(int shade)
    {
        OxyColor full = shade < 0 ? Ink.Blue : Ink.Red;
        return OxyColor.Interpolate(OxyColors.White, full, Math.Abs(shade) / (double)Shades);
    }
}
