using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Budgets;

/// <summary>Whether the linear budget holds.</summary>
public enum BudgetValidity
{
    /// <summary>Both ends agree with the propagated distributions.</summary>
    Holds,

    /// <summary>In more trials than may lie beyond an end a level does not rise over the floor: the interval is open.</summary>
    Open,

    /// <summary>The noise correction bends over the width of the uncertainties: the interval is lopsided.</summary>
    Bent,

    /// <summary>The interval is even, but of another width: few repeats, or a stated error that is not normal, rule it.</summary>
    Width,
}

/// <summary>A linear budget held against the propagation of whole distributions. Immutable.</summary>
/// <remarks>
/// The linear budget holds where both ends of its interval agree with those of the trials to half a unit of the first digit of
/// its standard uncertainty; the trials go on until their ends stand still to a fifth of that, or to their largest number. Only
/// the ends are looked at: with three repeats the trials have no standard deviation. Source: JCGM 101:2008, 7.9, 8.1 and 8.2;
/// 6.4.9 (Student's t for means of repeats).
/// </remarks>
public sealed record BudgetComparison
{
    // Beyond this the ends of very heavy tails hardly move and the report would have to wait.
    private const int MostTrials = 50_000;
    private const double ToleranceWithoutBudgetDb = 0.05;

    // An interval is lopsided when its halves differ by a tenth: less may be chance in the trials.
    private const double LopsidedShare = 0.1;

    private BudgetComparison()
    {
    }

    /// <summary>The trials.</summary>
    public required MonteCarlo Propagated { get; init; }

    /// <summary>Interval of the linear budget; null where there is none.</summary>
    public required Interval? Linear { get; init; }

    /// <summary>How far the ends may lie apart, in dB.</summary>
    public required double ToleranceDb { get; init; }

    /// <summary>Whether the linear budget holds, and why not.</summary>
    public required BudgetValidity Validity { get; init; }

    internal static BudgetComparison Of(
        MeasurementModel model, ImmutableArray<InputQuantity> inputs, LinearBudget? linear, MonteCarloPlan draws)
    {
        double tolerance = linear is { StandardUncertainty: > 0 } known ? MonteCarlo.HalfUnit(known.StandardUncertainty, 1)
            : ToleranceWithoutBudgetDb;
        MonteCarloPlan plan = draws with { EndTolerance = tolerance / 5, MostTrials = MostTrials };
        MonteCarlo trials = MonteCarlo.Of(model, inputs, plan);
        Interval? interval = linear?.Interval(draws.Confidence);
        return new BudgetComparison
        {
            Propagated = trials,
            Linear = interval,
            ToleranceDb = tolerance,
            Validity = Judged(trials, linear, interval, tolerance),
        };
    }

    private static BudgetValidity Judged(MonteCarlo trials, LinearBudget? linear, Interval? interval, double tolerance)
    {
        if (linear is null || interval is not { } own || !double.IsFinite(trials.Symmetric.Width))
        {
            return BudgetValidity.Open;
        }

        double below = linear.Estimate - trials.Symmetric.Low;
        double above = trials.Symmetric.High - linear.Estimate;
        return trials.Confirms(own, tolerance) ? BudgetValidity.Holds
            : Math.Abs(above - below) > Math.Max(tolerance, LopsidedShare * (above + below) / 2) ? BudgetValidity.Bent
            : BudgetValidity.Width;
    }
}
