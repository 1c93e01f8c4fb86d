using SweepStats.Repeats;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Bands;

/// <summary>Interval of the weighted mean of a curve by leaving out one repeat at a time.</summary>
internal sealed class FigureEstimator
{
    // Far above the floor the slopes of reference and covered level differ by rounding alone.
    private const double RoundingDb = 1e-9;

    private readonly CurveSpread? _spread;
    private readonly Confidence _confidence;
    private readonly double _value;
    private readonly bool _bound;

    // Bounds do not move with an error of the levels: the mean then takes a share of it only.
    private readonly double[] _moving;

    /// <param name="curve">The curve.</param>
    /// <param name="weights">
    /// Weights that sum to 1 at most; what a frequency of weight 0 holds does not matter. Where some are negative, errors that
    /// all frequencies share are taken to add up.
    /// </param>
    /// <param name="confidence">Level of the limits.</param>
    public FigureEstimator(ShieldingCurve curve, double[] weights, Confidence confidence)
    {
        (_spread, _confidence) = (curve.Spread, confidence);
        _moving = new double[weights.Length];
        ReadOnlySpan<double> values = curve.Readings.ValuesDb;
        for (int f = 0; f < weights.Length; f++)
        {
            if (weights[f] != 0)
            {
                bool bound = curve.Readings.IsBound(f);
                _value += weights[f] * values[f];
                _bound |= bound;
                _moving[f] = bound ? 0 : weights[f];
            }
        }
    }

    /// <summary>What the error of the mean is made of; null where the mean is not to be had.</summary>
    public FigureParts? Parts()
    {
        if (!double.IsFinite(_value) || _spread is null)
        {
            return null;
        }

        var alone = new FigureParts { Value = _value, Bound = _bound, Repeated = _spread.Repeated };
        return !_spread.Repeated ? alone : alone with
        {
            Reference = Rounded(Judged(Jackknife(_spread.WithoutEachReference(_moving)), _spread.ReferenceWorth),
                _spread.ReferenceRounding(_moving)),
            Covered = Rounded(Judged(Jackknife(_spread.WithoutEachCovered(_moving)), _spread.CoveredWorth),
                _spread.CoveredRounding(_moving)),
            Floor = new Contribution(Change(_spread.FloorShift), _spread.FloorDegreesOfFreedom),
            TypeBShare = _spread.TypeB.StandardUncertainty == 0 ? 0 : _moving.Sum(Math.Abs),
            AveragingShift = Change(_spread.AveragingShift),
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
        return parts.Bound ? new BandFigure(null, parts.Value - reach, null)
            : new BandFigure(parts.Value, parts.Value - reach, parts.Value + reach);
    }

    private double Whole(double half, double share, double dof) =>
        share == 0 ? half : share * _spread!.TypeB.Widened(_confidence.TwoSidedQuantile).Half(half / share, dof);

    private double Reach(double uncertainty, double dof) =>
        uncertainty == 0 ? 0 : uncertainty * StudentT.Quantile(_confidence.TwoSidedQuantile, dof);

    // Leaving out one repeat at a time supposes that they are independent.
    private static Contribution Judged(Contribution jackknifed, RepeatWorth? worth) => worth?.OfFigure(jackknifed) ?? jackknifed;

    // The same in every repeat, so that leaving one out does not show it.
    private static Contribution Rounded(Contribution scatter, double rounding)
    {
        ReadOnlySpan<Contribution> parts = [scatter, new Contribution(rounding, double.PositiveInfinity)];
        return rounding == 0 ? scatter
            : new Contribution(WelchSatterthwaite.Combined(parts), WelchSatterthwaite.DegreesOfFreedom(parts));
    }

    private static Contribution Jackknife(double[] changes)
    {
        double mean = changes.Average();
        double squares = changes.Sum(change => (change - mean) * (change - mean));
        return new Contribution(Math.Sqrt((changes.Length - 1.0) / changes.Length * squares), changes.Length - 1);
    }

    private double Change(Func<int, double> shift) =>
        Shifted(_moving, shift) + Shifted(Array.ConvertAll(_moving, w => -w), shift);

    // Mean leaves out weights below zero: those of either sign by themselves.
    private static double Shifted(double[] weights, Func<int, double> shift) =>
        Math.Abs(LogWeights.Mean(weights, shift)) is var change && change > RoundingDb ? change : 0;
}
