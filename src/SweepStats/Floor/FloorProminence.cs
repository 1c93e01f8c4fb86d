using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>
/// How far the floor at each frequency stands above the floor to its left and to its right, and how uneven it is by itself.
/// </summary>
/// <remarks>
/// A level is held against the higher of its two sides, each the median of some neighbours: a slope, a step, a range of the
/// receiver a dozen points wide stand above one side only, a transmitter above both. Waves stand above both as well, everywhere
/// in the band: how far levels usually lie from the higher side, beyond what noise makes them, is the unevenness that a
/// transmitter has to rise out of. A straight line is taken out of floors of many points, since on a slope the higher side lies
/// too high; a bend of the floor then stands above both sides by as much as the line falls over half a side
/// (<see cref="BendDb"/>). Levels in dB, one a frequency.
/// </remarks>
internal sealed class FloorProminence
{
    // Six neighbours to a side: of a range twelve points wide, one side of every point lies wholly inside. The median of six
    // stands two points of a carrier beside it. Where fifteen show no other level within the noise they tell it better.
    private const int MostBeside = 6;
    private const int WideBeside = 15;

    // With fewer frequencies the neighbours are too far away to be taken together.
    private const int PointsForOneBeside = 8;

    // Fewer on a side are as likely part of the same transmitter as not.
    private const int FewestBeside = 3;

    // At an end one side is missing. The other tells how the floor goes on where it hardly slopes, beyond twice the error of a
    // difference of two sides; a steeper one may go on anyhow.
    private const double MostRiseAtEndDb = 3;
    private const double SlopeAtEnd = 2;
    private const double RiseErrors = 3;

    // A median errs 1.25 times as far as a mean (normal variables).
    private const double MedianError = 1.25;

    // Unevenness is that of the frequencies round about; of fewer it cannot be told.
    private const int HalfWidth = 100;
    private const int FewestForUnevenness = 8;

    // Median of |x − median| of a normal variable, in standard deviations.
    private const double NormalMedian = 0.6745;

    private readonly double[] _level;
    private readonly bool[] _leftOut;
    private readonly double _error;
    private readonly int _beside;
    private readonly double _slope;

    /// <param name="level">Log mean of the floor at each frequency in dB.</param>
    /// <param name="leftOut">Frequencies at which something transmits: they are no neighbours.</param>
    /// <param name="error">Standard error of a level in dB.</param>
    public FloorProminence(double[] level, bool[] leftOut, double error)
    {
        _beside = Math.Clamp(level.Length / PointsForOneBeside, 1, MostBeside);
        _slope = _beside < MostBeside ? 0 : Slope(level);
        _level = [.. level.Select((l, f) => l - (_slope * f))];
        _leftOut = leftOut;
        _error = error;
        ExcessDb = [.. Enumerable.Range(0, level.Length).Select(f => _level[f] - HigherSide(f))];
        ShowsUnevenness = ExcessDb.Count(double.IsFinite) >= FewestForUnevenness;
    }

    /// <summary>
    /// How far each level stands above the higher of its two sides, in dB; not a number where there are no two sides to hold it
    /// against.
    /// </summary>
    public double[] ExcessDb { get; }

    /// <summary>Standard error of one side in dB; of a narrow one, where they are of two widths.</summary>
    public double SideErrorDb => _beside == 1 ? _error : MedianError * _error / Math.Sqrt(_beside);

    /// <summary>How far a bend of the floor may stand above both sides, in dB.</summary>
    public double BendDb => Math.Abs(_slope) * (_beside + 1) / 2;

    /// <summary>Whether neighbours are near enough to show how uneven the floor is.</summary>
    public bool ShowsUnevenness { get; }

    /// <summary>
    /// Standard deviation in dB, told by its median, of how far levels lie from the higher side round about; 0 where it cannot
    /// be told.
    /// </summary>
    public double SpreadDb(int point)
    {
        int start = Math.Clamp(point - HalfWidth, 0, Math.Max(0, _level.Length - (2 * HalfWidth) - 1));
        int end = Math.Min(_level.Length, start + (2 * HalfWidth) + 1);
        double[] away =
            [.. Enumerable.Range(start, end - start).Where(f => !_leftOut[f]).Select(f => ExcessDb[f]).Where(double.IsFinite)];
        if (away.Length < FewestForUnevenness)
        {
            return 0;
        }

        double middle = Sample.Median(away);
        return Sample.Median([.. away.Select(a => Math.Abs(a - middle))]) / NormalMedian;
    }

    // Tukey's resistant line: between the medians of the first and of the last third (Tukey 1977, Exploratory Data Analysis, 5;
    // from memory).
    private static double Slope(double[] level)
    {
        int third = level.Length / 3;
        return third == 0 ? 0
            : (Sample.Median(level.AsSpan(^third..)) - Sample.Median(level.AsSpan(..third))) / (level.Length - third);
    }

    private double HigherSide(int point)
    {
        double[] left = Beside(point, -1);
        double[] right = Beside(point, 1);
        int fewest = Math.Min(FewestBeside, _beside);
        if (left.Length >= fewest && right.Length >= fewest)
        {
            return Math.Max(Side(left), Side(right));
        }

        double[] only = left.Length > right.Length ? left : right;
        bool tells = _beside >= FewestBeside && only.Length >= 2 * _beside;
        return tells ? AtEnd(only, left.Length > right.Length ? -1 : 1) : double.NaN;
    }

    // The line that was taken out rises towards the end, or not, as the levels themselves do.
    private double AtEnd(double[] only, int direction)
    {
        double near = Sample.Median(only.AsSpan(.._beside));
        double rise = near - Sample.Median(only.AsSpan(_beside, _beside)) - (direction * _beside * _slope);
        return rise + (RiseErrors * SideErrorDb) > MostRiseAtEndDb ? double.NaN : near + (SlopeAtEnd * Math.Max(0, rise));
    }

    private double Side(double[] side)
    {
        double near = Sample.Median(side.AsSpan(..Math.Min(_beside, side.Length)));
        double wide = Sample.Median(side);
        return _beside == MostBeside && Math.Abs(near - wide) <= SideErrorDb ? wide : near;
    }

    // The nearest first.
    private double[] Beside(int point, int direction)
    {
        List<double> beside = [];
        for (int f = point + direction; f >= 0 && f < _level.Length && beside.Count < WideBeside; f += direction)
        {
            if (!_leftOut[f])
            {
                beside.Add(_level[f]);
            }
        }

        return [.. beside];
    }
}
