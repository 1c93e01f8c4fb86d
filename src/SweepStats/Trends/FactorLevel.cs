using SweepStats.Statistics;

namespace SweepStats.Trends;

/// <summary>
/// What is known of the mean shielding of such specimens at one frequency, over the range of the factor that was measured. Unit:
/// dB.
/// </summary>
internal abstract class FactorLevel
{
    /// <summary>Whether it holds between measured values too.</summary>
    public abstract bool Between { get; }

    /// <summary>
    /// Lower and upper limit at a value of the factor, each at a one-sided level; the upper is infinite where bounds stand in.
    /// </summary>
    public abstract Interval At(double value, double level);
}

/// <summary>By the straight line through the specimens.</summary>
/// <remarks>
/// One scatter everywhere is not taken for granted: the reach is the larger of that by one scatter (Student's t on n − 2) and of
/// that by the scatter near each value (<see cref="LocalScatter"/>). Where scatter grows to four times as much along the factor
/// the line by itself names too much in 10 to 17 %, the larger of the two in some 6 % (where it is the same everywhere, in 3 to 4
/// %).
/// </remarks>
internal sealed class LineLevel : FactorLevel
{
    private readonly RegressionLine _line;
    private readonly SharedReach _shared;
    private readonly LocalScatter _local;
    private readonly double[] _residuals;

    /// <param name="line">The line.</param>
    /// <param name="shared">What all specimens share.</param>
    /// <param name="local">The values of the factor, one a specimen.</param>
    /// <param name="residuals">Of each specimen about the line.</param>
    public LineLevel(RegressionLine line, SharedReach shared, LocalScatter local, double[] residuals) =>
        (_line, _shared, _local, _residuals) = (line, shared, local, residuals);

    /// <summary>True: the line holds between them.</summary>
    public override bool Between => true;

    /// <inheritdoc/>
    public override Interval At(double value, double level)
    {
        double reach = Math.Max(_shared.Of(_line.ErrorAt(value), level), _shared.Of(_local.ErrorAt(_residuals, value), level));
        return new Interval(_line.At(value) - reach, _line.At(value) + reach);
    }
}

/// <summary>By the means at each measured value.</summary>
/// <remarks>
/// A bound stands in for a value that lies above it, so that a mean with bounds in it is a bound too. Bounds lie closer together
/// than what they bound, and show no
/// scatter: that is given.
/// </remarks>
/// <param name="design">The values.</param>
/// <param name="specimens">What is known of each specimen.</param>
/// <param name="scatter">Scatter of a single specimen.</param>
/// <param name="shared">What all specimens share.</param>
internal sealed class GroupLevel(
    FactorDesign design, SpecimenLevels specimens, GroupScatter scatter, SharedReach shared) : FactorLevel
{
    /// <summary>False: a mean says nothing of values beside its own.</summary>
    public override bool Between => false;

    /// <inheritdoc/>
    public override Interval At(double value, double level)
    {
        int right = design.Values.AsSpan().BinarySearch(value);
        if (right >= 0)
        {
            return Of(right, level);
        }

        (Interval before, Interval behind) = (Of(~right - 1, level), Of(~right, level));
        return new Interval(Math.Min(before.Low, behind.Low), Math.Max(before.High, behind.High));
    }

    private Interval Of(int group, double level)
    {
        int[] members = design.Members[group];
        double reach = scatter.Reach(group, single => shared.Of(single.Scaled(1 / Math.Sqrt(members.Length)), level));
        double mean = members.Average(i => specimens.LowestAt(i, level));
        return new Interval(mean - reach, members.Any(specimens.IsBound) ? double.PositiveInfinity : mean + reach);
    }
}
