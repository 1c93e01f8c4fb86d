using System.Runtime.InteropServices;
using SweepStats.Files.Traces.Text;

namespace SweepStats.Files.Traces.Touchstone;

/// <summary>
/// The levels of one parameter in dB as they come in, their phases, and what is doubtful about them. Negative infinity stands
/// where there is no level.
/// </summary>
/// <param name="format">How the file writes complex numbers.</param>
/// <param name="capacity">Points expected.</param>
internal sealed class TouchstoneLevels(TouchstoneFormat format, int capacity) : IDisposable
{
    /// <summary>No passive part and no usual amplifier has more gain; raw ratios of receivers and misread formats do.</summary>
    public const double HighDb = 40;

    // Some analysers fill what they did not measure with a level that no receiver can resolve.
    private const double UnresolvableDb = -199;

    private const int FewestPoints = 3;

    private readonly PooledList<double> _levels = new(capacity);
    private readonly TouchstonePhases _phases = new(format, capacity);
    private int _count;
    private double _least = double.PositiveInfinity;
    private double _most = double.NegativeInfinity;
    private double _firstLevel;
    private int _zeros;
    private int _high;
    private bool _constant = true;

    /// <summary>Line of the first point, from 1.</summary>
    public int FirstLine { get; private set; }

    /// <summary>Line of the first point that has no level, from 1, and what its magnitude is; null where all have one.</summary>
    public (int Line, string Because)? WithoutLevel { get; private set; }

    /// <summary>Why the parameter was never measured; null where it was.</summary>
    public string? Blank =>
        _zeros == _count ? "every magnitude is exactly 0: it was not measured"
        : _constant && _count > 1 && _firstLevel <= UnresolvableDb
        ? FormattableString.Invariant($"every level is {_firstLevel:F1} dB: it was not measured")
        : null;

    /// <summary>Whether the parameter was measured and every point has a level.</summary>
    public bool IsMeasured => Blank is null && WithoutLevel is null;

    /// <summary>
    /// Whether every level is above 0 dB and below 1: of all parameters of a network at once that is no measurement in dB, but of
    /// magnitudes.
    /// </summary>
    public bool LooksLinear => format == TouchstoneFormat.DecibelAngle && _count >= FewestPoints && _least > 0 && _most < 1;

    /// <summary>Whether most of the levels are above <see cref="HighDb"/>.</summary>
    public bool IsHigh => _high * 2L > _count;

    /// <summary>
    /// Takes a pair of numbers: the level is 20·log10 of the magnitude, or as it stands where the file is in dB.
    /// </summary>
    public void Add(double first, double second, int line)
    {
        double level = format switch
        {
            TouchstoneFormat.DecibelAngle => first,
            TouchstoneFormat.MagnitudeAngle => 20 * Math.Log10(first),
            _ => 20 * Math.Log10(double.Hypot(first, second)),
        };
        if (!double.IsFinite(level))
        {
            _zeros += double.IsNegativeInfinity(level) ? 1 : 0;
            WithoutLevel ??= (line,
                double.IsPositiveInfinity(level) ? "is too large for a number" : "is not positive, which has no level in dB");
            level = double.NegativeInfinity;
        }

        if (_count++ == 0)
        {
            (FirstLine, _firstLevel) = (line, level);
        }

        (_least, _most) = (Math.Min(_least, level), Math.Max(_most, level));
        _constant &= level == _firstLevel;
        _high += level > HighDb ? 1 : 0;
        _levels.Add(level);
        _phases.Add(first, second);
    }

    /// <summary>Hands out the levels, once: the working memory goes back, so that they are held only once.</summary>
    public ImmutableArray<double> HandOut()
    {
        double[] levels = _levels.Items.ToArray();
        _levels.Dispose();
        return ImmutableCollectionsMarshal.AsImmutableArray(levels);
    }

    /// <summary>Hands out the phases in degrees, once; none where the file carries none.</summary>
    public ImmutableArray<double> HandOutPhases() => _phases.HandOut();

    /// <summary>Gives the working memory back, handed out or not.</summary>
    public void Dispose()
    {
        _levels.Dispose();
        _phases.Dispose();
    }
}
