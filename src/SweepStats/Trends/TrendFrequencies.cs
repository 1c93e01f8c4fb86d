using SweepStats.Lots;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Trends;

/// <summary>Lines and levels at the single frequencies.</summary>
/// <remarks>
/// Where every specimen is bounded from both sides there is a line, and it counts as long as no bend or lack of fit shows (Holm
/// over the frequencies). Where some specimen
/// is known from below only, its bound is no value and there is no line; the means at each value then tell, and specimens are
/// taken to scatter there as they do,
/// on the average, where all are clear.
/// </remarks>
internal sealed class TrendFrequencies
{
    private readonly FactorDesign _design;
    private readonly ImmutableArray<ShieldingCurve> _curves;
    private readonly OneSidedLimits[] _limits;
    private readonly LackOfFit?[] _fits;
    private readonly LocalScatter? _local;

    /// <summary>Fits a line at each frequency that is clear for all specimens; curves come in the order of the design.</summary>
    public TrendFrequencies(FactorDesign design, ImmutableArray<ShieldingCurve> curves, FrequencyGrid grid)
    {
        (_design, _curves, _limits) = (design, curves, [.. curves.Select(c => new OneSidedLimits(c))]);
        Grid = grid;
        Values = [.. Enumerable.Range(0, grid.Count).Select(f => curves.Select(c => c.Readings.ValuesDb[f]).ToArray())];
        Bounds = [.. Enumerable.Range(0, grid.Count).Select(f => curves.Select(c => c.Readings.IsBound(f)).ToArray())];
        bool[] clear = [.. Bounds.Select(b => !b.Contains(true) && design.Lack == TrendLack.None)];
        double[] x = [.. design.X];
        _local = design.Lack == TrendLack.None ? new LocalScatter(x) : null;
        Lines = [.. Values.Select((y, f) => clear[f] ? RegressionLine.Of(x, y) : null)];
        _fits = [.. Values.Select((y, f) => clear[f] ? LackOfFit.Of(x, y) : null)];
        StraightAdjusted = Adjusted(_fits);
    }

    /// <summary>The frequencies.</summary>
    public FrequencyGrid Grid { get; }

    /// <summary>Shielding or bound in dB, by frequency, then specimen.</summary>
    public double[][] Values { get; }

    /// <summary>Where it is a bound.</summary>
    public bool[][] Bounds { get; }

    /// <summary>The line at each frequency; null where there is none.</summary>
    public RegressionLine?[] Lines { get; }

    /// <summary>Probability that it is straight, for the number of frequencies.</summary>
    public double?[] StraightAdjusted { get; }

    /// <summary>Probability that the line at a frequency is straight, by itself.</summary>
    public double? StraightAt(int f) => _fits[f]?.Probability;

    /// <summary>What the shielding is known by at a frequency; null where by nothing.</summary>
    /// <param name="f">Place of the frequency.</param>
    /// <param name="straight">Whether the line through the band's means counts as straight: where it does not, no single line is
    /// believed either.</param>
    /// <param name="falseAlarm">Chance of refusing a straight line.</param>
    public FactorLevel? LevelAt(int f, bool straight, double falseAlarm) =>
        Shared(f) is not { } shared || !Array.TrueForAll(Values[f], double.IsFinite) ? null
        : Lines[f] is { } line && straight && !(StraightAdjusted[f] <= falseAlarm)
        ? new LineLevel(line, shared, _local!, Residuals(f, line))
        : Single(f, straight) is { } single ? new GroupLevel(_design, KnownAt(f), single, shared) : null;

    /// <summary>Whether the errors that all specimens share are known at a frequency.</summary>
    public bool IsSharedKnown(int f) => Shared(f) is not null;

    private double[] Residuals(int f, RegressionLine line) => [.. Values[f].Select((y, i) => y - line.At(_design.X[i]))];

    private SpecimenLevels KnownAt(int f) => new(Values[f], Bounds[f], (i, level) => _limits[i].Low(f, level));

    // A bound allows for reference, floor and stated errors already; the floor's error near it has no first order.
    private SharedReach? Shared(int f)
    {
        ShieldingCurve[] clear = [.. _curves.Where((_, i) => !Bounds[f][i])];
        ShieldingCurve[] asked = clear.Length > 0 ? clear : [.. _curves];
        return SharedErrors.Of(asked, own => own(f)) is not [var reference, var floor, _] ? null
            : new SharedReach(
                reference, clear.Length > 0 ? floor : Contribution.None, asked[0].Spread!.TypeB,
                clear.Length > 0 ? clear.Max(c => Math.Abs(c.Spread?.AveragingShift(f) ?? 0)) : 0);
    }

    private GroupScatter? Single(int f, bool straight) => Bounds[f].Contains(true)
        ? Usual([.. Enumerable.Range(0, Grid.Count).Select(g => straight ? AboutLine(g) : AboutMeans(g)).OfType<GroupScatter>()])
        : AboutMeans(f);

    private GroupScatter? AboutMeans(int f)
    {
        if (_fits[f] is not { PureError: { } pure, PureDegrees: var degrees })
        {
            return null;
        }

        double[] squares = [.. _design.Members.Select(m => Squares([.. m.Select(i => Values[f][i])]))];
        return new GroupScatter(new Contribution(pure, degrees),
            GroupScatter.Pooled(squares, [.. _design.Members.Select(m => m.Length - 1.0)]));
    }

    private GroupScatter? AboutLine(int f)
    {
        if (Lines[f] is not { } line)
        {
            return null;
        }

        double[] left = Residuals(f, line);
        double[] squares = [.. _design.Members.Select(m => m.Sum(i => left[i] * left[i]))];
        return new GroupScatter(
            new Contribution(line.ResidualDeviation, line.Slope.DegreesOfFreedom),
            GroupScatter.Pooled(squares, [.. _design.Members.Select(m => m.Sum(i => _local!.Free[i]))]));
    }

    private static double Squares(double[] values) => Sample.SquaredDeviations(values, Sample.Mean(values));

    // The frequencies of a sweep go together, so all of them have no more degrees of freedom than one.
    private static GroupScatter? Usual(GroupScatter[] known) => known.Length == 0 ? null
        : new GroupScatter(
            Usual([.. known.Select(k => k.Everywhere)]),
            [.. known[0].Near.Select(
                (near, g) => near is null ? (Contribution?)null : Usual([.. known.Select(k => k.Near[g]!.Value)]))]);

    private static Contribution Usual(Contribution[] known) =>
        new(Math.Sqrt(known.Average(c => c.StandardUncertainty * c.StandardUncertainty)), known[0].DegreesOfFreedom);

    private static double?[] Adjusted(LackOfFit?[] fits)
    {
        int[] asked = [.. Enumerable.Range(0, fits.Length).Where(f => fits[f]?.Probability is not null)];
        double[] adjusted = Holm.Adjusted([.. asked.Select(f => fits[f]!.Probability!.Value)]);
        var all = new double?[fits.Length];
        for (int i = 0; i < asked.Length; i++)
        {
            all[asked[i]] = adjusted[i];
        }

        return all;
    }
}
