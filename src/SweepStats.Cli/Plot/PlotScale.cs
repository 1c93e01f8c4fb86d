namespace SweepStats.Cli.Plot;

/// <summary>Where a frequency lies between the first and the last of a trace.</summary>
internal sealed class PlotScale
{
    private const double TwoDecades = 100;

    private readonly double _first, _last;

    /// <param name="first">First frequency in Hz, not negative.</param>
    /// <param name="last">Last frequency in Hz, above the first.</param>
    public PlotScale(double first, double last)
    {
        (_first, _last) = (first, last);
        IsLogarithmic = first > 0 && last / first > TwoDecades;
    }

    /// <summary>Whether equal ratios are equally wide. A scale from 0 Hz has none.</summary>
    public bool IsLogarithmic { get; }

    /// <summary>0 at the first frequency, 1 at the last.</summary>
    public double Share(double hertz) =>
        IsLogarithmic ? Math.Log(hertz / _first) / Math.Log(_last / _first) : (hertz - _first) / (_last - _first);
}
