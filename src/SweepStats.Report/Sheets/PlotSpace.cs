using OxyPlot.Axes;
using SweepStats.Quantities;
using SweepStats.Report.Drawing;
using SweepStats.Report.Text;
using SweepStats.Sweeps;

namespace SweepStats.Report.Sheets;

/// <summary>Size of a picture and where frequencies and decibels lie in it, in its own units. Immutable.</summary>
internal sealed class PlotSpace
{
    private const double LeftMargin = 36;
    private const double TopMargin = 22;
    private const double BottomMargin = 24;

    private readonly bool _logarithmic;
    private readonly double _start;
    private readonly double _stop;
    private readonly double _low;
    private readonly double _high;
    private readonly ImmutableArray<FrequencyBand> _gaps;

    /// <summary>A space whose level axis holds all values on round steps.</summary>
    /// <param name="width">Width.</param>
    /// <param name="height">Height.</param>
    /// <param name="grid">Frequencies from left to right.</param>
    /// <param name="levels">Values that must be seen, in dB.</param>
    /// <param name="rightMargin">Room at the right for words.</param>
    public PlotSpace(double width, double height, FrequencyGrid grid, IEnumerable<double> levels, double rightMargin = 10)
    {
        (Width, Height, Right, Bottom) = (width, height, width - rightMargin, height - BottomMargin);
        (_start, _stop, _logarithmic) = (grid[0].Value, grid[^1].Value, FrequencyScale.IsLogarithmic(grid));
        LinearAxis scale = DecibelScale.Axis(string.Empty, levels, 0.08);
        (_low, _high) = (scale.Minimum, scale.Maximum);
        // Numbers need some room between them, in small pictures more than the axis of a chart gives.
        int every = Math.Max(1, (int)Math.Ceiling(26 * (_high - _low) / scale.MajorStep / (Bottom - Top)));
        int steps = (int)Math.Round((_high - _low) / scale.MajorStep);
        IEnumerable<int> named = Enumerable.Range(0, steps + 1).Where(i => i % every == 0);
        Levels = [.. named.Select(i => Math.Round(_low + (i * scale.MajorStep), 6))];
        Frequencies = [.. Named(grid)];
        _gaps = FrequencyGaps.Of(grid);
    }

    /// <summary>Width of the picture.</summary>
    public double Width { get; }

    /// <summary>Height of the picture, down to where the frequencies are named.</summary>
    public double Height { get; }

    /// <summary>Where the first frequency lies; levels are named beside it.</summary>
    public double Left { get; } = LeftMargin;

    /// <summary>Where the last frequency lies.</summary>
    public double Right { get; }

    /// <summary>Where the highest level lies; down counts as more.</summary>
    public double Top { get; } = TopMargin;

    /// <summary>Where the lowest level lies; frequencies are named below.</summary>
    public double Bottom { get; }

    /// <summary>Levels with a line across the picture.</summary>
    public ImmutableArray<double> Levels { get; }

    /// <summary>Frequencies named along the axis, both ends first.</summary>
    public ImmutableArray<FrequencyMark> Frequencies { get; }

    /// <summary>Lowest level that is shown.</summary>
    public double Lowest => _low;

    /// <summary>
    /// Left, top, right and bottom edge, first and last frequency in MHz, whether they lie by their logarithm, lowest and highest
    /// level.
    /// </summary>
    public string Scales =>
        FormattableString.Invariant(
            $"{Left:0.#} {Top:0.#} {Right:0.#} {Bottom:0.#} {_start / 1e6:G9} {_stop / 1e6:G9} {(_logarithmic ? 1 : 0)} ")
        + FormattableString.Invariant($"{_low:0.###} {_high:0.###}");

    /// <summary>A slice that ends at the edge of the picture where it has no upper end.</summary>
    public Slice Closed(Slice slice) => double.IsPositiveInfinity(slice.High) ? slice with { High = _high } : slice;

    /// <summary>Whether nothing was measured somewhere between two frequencies that follow each other.</summary>
    public bool Parts(double from, double to) => _gaps.Any(g => from <= g.Start.Value && to >= g.Stop.Value);

    /// <summary>Where a frequency lies.</summary>
    public double X(double hertz) => Left + ((Right - Left) * Share(hertz));

    /// <summary>Where a level lies; what is outside lies on the edge.</summary>
    public double Y(double decibels) => Bottom - ((Bottom - Top) * (Math.Clamp(decibels, _low, _high) - _low) / (_high - _low));

    private double Share(double hertz) => _stop == _start ? 0.5
        : _logarithmic ? Math.Log(hertz / _start) / Math.Log(_stop / _start)
        : (hertz - _start) / (_stop - _start);

    private IEnumerable<FrequencyMark> Named(FrequencyGrid grid)
    {
        if (_start == _stop)
        {
            return [new FrequencyMark(_start, PrintedFrequency.Frequency(grid[0]), "middle")];
        }

        FrequencyMark first = new(_start, PrintedFrequency.Frequency(grid[0]), "start");
        FrequencyMark last = new(_stop, PrintedFrequency.Frequency(grid[^1]), "end");
        double[] between = _logarithmic ? Ticks() : [_start + ((_stop - _start) / 2)];
        return
        [
            first,
            .. between.Select(f => new FrequencyMark(f, PrintedFrequency.Frequency(new Hertz(f)), "middle"))
                .Where(m => X(m.Hertz) + m.HalfWidth < Right - (2 * last.HalfWidth)),
            last,
        ];
    }

    private double[] Ticks()
    {
        new LogFrequencyAxis(_start, _stop).GetTickValues(out IList<double> labels, out _, out _);
        return [.. labels.Skip(1).SkipLast(1)];
    }
}
