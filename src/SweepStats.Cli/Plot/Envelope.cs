namespace SweepStats.Cli.Plot;

/// <summary>
/// The lowest and the highest level of a trace in each column of a plot, the lines between its points included.
/// </summary>
internal sealed class Envelope
{
    private readonly double[] _low, _high;

    /// <param name="columns">Columns of the plot; the centre of the first is the first frequency.</param>
    public Envelope(int columns)
    {
        (_low, _high) = (new double[columns], new double[columns]);
        Array.Fill(_low, double.PositiveInfinity);
        Array.Fill(_high, double.NegativeInfinity);
    }

    /// <summary>How many columns the plot has.</summary>
    public int Columns => _low.Length;

    /// <summary>The levels of a column; null where the trace does not pass through it.</summary>
    public (double Low, double High)? this[int column] => _low[column] <= _high[column] ? (_low[column], _high[column]) : null;

    /// <summary>A trace; a level that is not finite leaves a gap.</summary>
    /// <param name="hertz">Frequencies in Hz, rising.</param>
    /// <param name="levels">Levels, one a frequency.</param>
    /// <param name="columns">Columns of the plot.</param>
    public static Envelope Of(ReadOnlySpan<double> hertz, ReadOnlySpan<double> levels, int columns)
    {
        var envelope = new Envelope(columns);
        var scale = new PlotScale(hertz[0], hertz[^1]);
        Point? before = null;
        for (int i = 0; i < hertz.Length; i++)
        {
            if (!double.IsFinite(levels[i]))
            {
                before = null;
                continue;
            }

            Point here = new(Math.Clamp(scale.Share(hertz[i]), 0, 1) * (columns - 1), levels[i]);
            envelope.Line(before ?? here, here);
            before = here;
        }

        return envelope;
    }

    // A column reaches half a column to both sides of its centre; of the line it takes the part within.
    private void Line(Point from, Point to)
    {
        int last = Nearest(to.X);
        for (int column = Nearest(from.X); column <= last; column++)
        {
            Include(column, At(from, to, Math.Max(from.X, column - 0.5)));
            Include(column, At(from, to, Math.Min(to.X, column + 0.5)));
        }
    }

    private static int Nearest(double x) => (int)Math.Floor(x + 0.5);

    private static double At(Point from, Point to, double x)
    {
        double share = to.X > from.X ? Math.Clamp((x - from.X) / (to.X - from.X), 0, 1) : 1;
        // Weighted, not as a slope: the difference of two finite levels need not be finite.
        return (from.Y * (1 - share)) + (to.Y * share);
    }

    private void Include(int column, double level)
    {
        _low[column] = Math.Min(_low[column], level);
        _high[column] = Math.Max(_high[column], level);
    }

    /// <summary>Place in columns from the first, and level.</summary>
    private readonly record struct Point(double X, double Y);
}
