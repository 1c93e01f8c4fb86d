using System.Collections.Concurrent;
using SweepStats.Statistics;

namespace SweepStats.Uncertainty;

/// <summary>The sum of the stated errors that repeats do not show, in the difference of two levels. Immutable.</summary>
/// <remarks>
/// The distribution of the sum is computed on a grid, from which what an interval needs is read: a rectangle of half-width a adds
/// 0.95·a at 95 %, not 1.96 of its standard uncertainties, and two of them something in between. Unit: dB. Error: 0.2 % of a
/// quantile. Assumes errors that are independent of each other and of the repeats, the same for all sweeps of a role.
/// </remarks>
public sealed class SystematicError
{
    private const int Bins = 1200;
    private const int NodeCount = 80;

    // Normal and Student errors end here: what is left out is below 1e-9 for a normal one.
    private const double FarthestUncertainties = 6;

    private readonly double _step;
    private readonly double[] _mass;

    // Tables of half-widths take long to fill and serve all specimens and threads.
    private readonly ConcurrentDictionary<double, WidenedInterval> _widened = new();

    /// <summary>Adds up the errors of entries.</summary>
    public SystematicError(ImmutableArray<UncertaintyEntry> entries)
    {
        Spread[] parts =
            [.. entries.SelectMany(e => Enumerable.Repeat(e.Spread, e.TimesInDifference)).Where(s => s.StandardUncertainty > 0)];
        StandardUncertainty = Math.Sqrt(parts.Sum(p => p.StandardUncertainty * p.StandardUncertainty));
        Parts = [.. parts];
        DegreesOfFreedom = parts.Length == 0 ? double.PositiveInfinity
            : WelchSatterthwaite.DegreesOfFreedom(
                [.. parts.Select(p => new Contribution(p.StandardUncertainty, p.DegreesOfFreedom))]);
        double reach = parts.Sum(Reach);
        _step = reach * 2 / Bins;
        _mass = parts.Length == 0 ? [1] : Sum(parts, reach);
        Nodes = parts.Length == 0 ? [0] : [.. Enumerable.Range(0, NodeCount).Select(i => Quantile((i + 0.5) / NodeCount))];
    }

    /// <summary>No error at all.</summary>
    public static SystematicError None { get; } = new([]);

    /// <summary>Combined standard uncertainty in dB.</summary>
    public double StandardUncertainty { get; }

    /// <summary>Effective degrees of freedom of it.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>The single errors, one for each time it enters.</summary>
    public ImmutableArray<Spread> Parts { get; }

    /// <summary>Equally probable errors that stand for the distribution, rising.</summary>
    internal ImmutableArray<double> Nodes { get; }

    /// <summary>Half-widths of intervals with this error in them.</summary>
    /// <param name="probability">Probability below the upper end, more than one half.</param>
    internal WidenedInterval Widened(double probability) =>
        _widened.GetOrAdd(probability, static (p, error) => new WidenedInterval(error, p), this);

    /// <summary>The error that the sum stays below with a probability.</summary>
    public double Quantile(double probability)
    {
        double below = 0;
        for (int i = 0; i < _mass.Length; i++)
        {
            if (below + _mass[i] >= probability)
            {
                double part = _mass[i] > 0 ? (probability - below) / _mass[i] : 0.5;
                return (i - ((_mass.Length - 1) / 2.0) + part - 0.5) * _step;
            }

            below += _mass[i];
        }

        return (_mass.Length - 1) / 2.0 * _step;
    }

    private static double Reach(Spread spread) => Math.Min(spread.Limit,
        FarthestUncertainties * spread.StandardUncertainty * (double.IsFinite(spread.DegreesOfFreedom) ? 3 : 1));

    private double[] Sum(Spread[] parts, double reach)
    {
        double[] sum = [1];
        foreach (Spread part in parts)
        {
            int half = Math.Max(1, (int)Math.Ceiling(Reach(part) / reach * Bins / 2));
            var bins = new double[(2 * half) + 1];
            for (int i = 0; i < bins.Length; i++)
            {
                double middle = (i - half) * _step;
                bins[i] = part.Below(middle + (_step / 2)) - part.Below(middle - (_step / 2));
            }

            sum = Convolved(sum, bins);
        }

        double total = sum.Sum();
        return [.. sum.Select(m => m / total)];
    }

    private static double[] Convolved(double[] a, double[] b)
    {
        var sum = new double[a.Length + b.Length - 1];
        for (int i = 0; i < a.Length; i++)
        {
            for (int j = 0; j < b.Length; j++)
            {
                sum[i + j] += a[i] * b[j];
            }
        }

        return sum;
    }
}
