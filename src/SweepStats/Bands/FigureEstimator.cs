using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Bands;

/// <summary>Interval of one figure of a curve by leaving out one repeat at a time.</summary>
internal sealed class FigureEstimator
{
    private readonly CurveSpread? _spread;
    private readonly Confidence _confidence;
    private readonly double[] _shielding;
    private readonly bool[] _fixed;
    private readonly bool _readable;

    /// <param name="curve">The curve.</param>
    /// <param name="confidence">Level of the limits.</param>
    /// <param name="counts">Which frequencies the figures take; all unless given.</param>
    public FigureEstimator(ShieldingCurve curve, Confidence confidence, Func<int, bool>? counts = null)
    {
        _spread = curve.Spread;
        _confidence = confidence;
        _shielding = new double[curve.Readings.Length];
        _fixed = new bool[_shielding.Length];
        _readable = true;
        for (int f = 0; f < _shielding.Length; f++)
        {
            (double value, bool bound) = curve.Readings[f].ValueOrBound;
            _shielding[f] = value;
            bool taken = counts is null || counts(f);
            _fixed[f] = bound && taken;
            _readable &= double.IsFinite(value) || !taken;
        }
    }

    /// <summary>What the error of a figure that grows with the shielding at every frequency is made of; null where the figure is not to be had.</summary>
    public FigureParts? Parts(Func<double[], double> figure)
    {
        if (!_readable || _spread is null)
        {
            return null;
        }

        var alone = new FigureParts { Value = figure(_shielding), Bound = _fixed.Contains(true), Repeated = _spread.Repeated };
        return !_spread.Repeated ? alone : alone with
        {
            Reference = Judged(Jackknife(figure, _spread.ReferenceUnits, _spread.WithoutReference), _spread.ReferenceWorth),
            Covered = Judged(Jackknife(figure, _spread.CoveredUnits, _spread.WithoutCovered), _spread.CoveredWorth),
            Floor = new Contribution(HalfChange(figure, _spread.FloorShift), _spread.FloorDegreesOfFreedom),
            TypeBShare = _spread.TypeB.StandardUncertainty == 0 ? 0 : HalfChange(figure, _ => _spread.TypeB.StandardUncertainty) / _spread.TypeB.StandardUncertainty,
            AveragingShift = HalfChange(figure, _spread.AveragingShift),
        };
    }

    /// <summary>Value and limits of a figure.</summary>
    public BandFigure Limits(FigureParts? figure)
    {
        if (figure is not { } parts)
        {
            return default;
        }

        if (!parts.Repeated)
        {
            return new BandFigure(parts.Bound ? null : parts.Value, null, null);
        }

        ReadOnlySpan<Contribution> repeats = [parts.Reference, parts.Covered];
        double dof = WelchSatterthwaite.DegreesOfFreedom(repeats);
        double scatter = Reach(WelchSatterthwaite.Combined(repeats), dof);
        double floor = Reach(parts.Floor.StandardUncertainty, parts.Floor.DegreesOfFreedom);
        // Not knowing how the receiver averages is no scatter: it shifts the figure as a whole.
        double reach = Whole(Math.Sqrt((scatter * scatter) + (floor * floor)), parts.TypeBShare, dof) + parts.AveragingShift;
        return parts.Bound ? new BandFigure(null, parts.Value - reach, null) : new BandFigure(parts.Value, parts.Value - reach, parts.Value + reach);
    }

    // Bounds do not move with an error of the levels: the figure then takes a share of it only.
    private double Whole(double half, double share, double dof) =>
        share == 0 ? half : share * _spread!.TypeB.Widened(_confidence.TwoSidedQuantile).Half(half / share, dof);

    private double Reach(double uncertainty, double dof) =>
        uncertainty == 0 ? 0 : uncertainty * StudentT.Quantile(_confidence.TwoSidedQuantile, dof);

    // Leaving out one repeat at a time supposes that they are independent.
    private static Contribution Judged(Contribution jackknifed, RepeatWorth? worth) => worth?.OfFigure(jackknifed) ?? jackknifed;

    private Contribution Jackknife(Func<double[], double> figure, int units, Func<int, int, double> shift)
    {
        var left = new double[units];
        double mean = 0;
        for (int j = 0; j < units; j++)
        {
            left[j] = figure(Shifted(f => shift(j, f)));
            mean += left[j] / units;
        }

        double squares = 0;
        foreach (double value in left)
        {
            squares += (value - mean) * (value - mean);
        }

        return new Contribution(Math.Sqrt((units - 1.0) / units * squares), units - 1);
    }

    private double HalfChange(Func<double[], double> figure, Func<int, double> shift) =>
        Math.Abs(figure(Shifted(shift)) - figure(Shifted(f => -shift(f)))) / 2;

    private double[] Shifted(Func<int, double> shift)
    {
        var moved = new double[_shielding.Length];
        for (int f = 0; f < moved.Length; f++)
        {
            moved[f] = _shielding[f] + (_fixed[f] ? 0 : shift(f));
        }

        return moved;
    }
}
