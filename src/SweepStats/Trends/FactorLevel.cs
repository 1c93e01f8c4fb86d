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
internal sealed class LineLevel(RegressionLine line, SharedReach shared) : FactorLevel
{
    public override bool Between => true;

    public override Interval At(double value, double level)
    {
        double reach = shared.Of(line.ErrorAt(value), level);
        return new Interval(line.At(value) - reach, line.At(value) + reach);
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
/// <param name="single">Scatter of a single specimen.</param>
/// <param name="shared">What all specimens share.</param>
internal sealed class GroupLevel(
    FactorDesign design, SpecimenLevels specimens, Contribution single, SharedReach shared) : FactorLevel
{
    public override bool Between => false;

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
        double reach = shared.Of(single.Scaled(1 / Math.Sqrt(members.Length)), level);
        double mean = members.Average(i => specimens.LowestAt(i, level));
        return new Interval(mean - reach, members.Any(specimens.IsBound) ? double.PositiveInfinity : mean + reach);
    }
}
