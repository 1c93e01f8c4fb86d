using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Statistics;
using SweepStats.Verdicts;

namespace SweepStats.Trends;

/// <summary>One frequency held against the requirement along the ordered factor.</summary>
/// <remarks>
/// "Met up to" asks the measured values in their order, the lowest first, and stops at the first at which the lower limit does
/// not reach what is asked; between that
/// one and the one before it the line is followed to where its limit crosses. Testing in an order that was fixed beforehand and
/// stopping at the first failure needs no
/// allowance for the number of tests: to name a value beyond the true crossing, the test at that crossing has to err, and it errs
/// once in 1/α. (The lower limit of a line is
/// concave in the factor, so that what holds at two values holds between them.) "Not met from" asks from the highest down by the
/// same argument.
/// Source: fixed sequence, Maurer, Hothorn and Lehmacher 1995 (from memory).
/// "Meets" needs every frequency (intersection and union: no allowance due); "fails" claims one among many, by limits of level 1
/// − α/m (Bonferroni), as in the verdict.
/// </remarks>
internal sealed class AskedFrequency
{
    private const int Halvings = 40;

    private readonly FactorLevel? _level;
    private readonly ImmutableArray<double> _values;
    private readonly DecisionRule _rule;
    private readonly double _required, _strict;
    private readonly Bias _bias;

    /// <param name="level">What is known there; null where nothing is.</param>
    /// <param name="values">The values measured, rising.</param>
    /// <param name="rule">What is asked.</param>
    /// <param name="asked">Shielding asked for in dB, and how many frequencies are asked about.</param>
    /// <param name="bias">How far findings could move it.</param>
    public AskedFrequency(
        FactorLevel? level, ImmutableArray<double> values, DecisionRule rule, FrequencyQuestion asked, Bias bias)
    {
        (_level, _values, _rule, _bias) = (level, values, rule, bias);
        (_required, _strict) = (asked.RequiredDb, 1 - ((1 - rule.Level.Level) / asked.Frequencies));
        MetUpTo = Reached(values, IsMet);
        NotMetFrom = Reached([.. values.Reverse()], Fails);
    }

    /// <summary>Highest value up to which the requirement is met without a gap; null where not even at the lowest.</summary>
    public double? MetUpTo { get; }

    /// <summary>Lowest value from which on all fail it; null where not even the highest does.</summary>
    public double? NotMetFrom { get; }

    /// <summary>How the frequency stands at a value.</summary>
    public RequirementOutcome OutcomeAt(double value)
    {
        Interval known = Known(value, _rule.Level.Level);
        return Fails(value) ? RequirementOutcome.Fails
            : IsMet(value) ? RequirementOutcome.Meets
            : IsOverturnedAt(value) || (double.IsPositiveInfinity(known.High) && known.Low < _required)
            ? RequirementOutcome.CannotTell
            : RequirementOutcome.Undecided;
    }

    /// <summary>Whether the limits decide at a value, and a finding could overturn it.</summary>
    public bool IsOverturnedAt(double value) =>
        (SpareAt(value) >= 0 && !IsMet(value)) || (Known(value, _strict).High < _required && !Fails(value));

    /// <summary>How far the lower limit lies over what it has to reach, in dB.</summary>
    public double SpareAt(double value) => Known(value, _rule.Level.Level).Low - _required - _rule.GuardBand.Value;

    private bool IsMet(double value) => SpareAt(value) is var spare && spare >= 0 && spare >= _bias.LowerByDb;

    private bool Fails(double value) =>
        _required - Known(value, _strict).High is var missing && missing > 0 && missing > _bias.HigherByDb;

    private Interval Known(double value, double level) =>
        _level?.At(value, level) ?? new Interval(double.NegativeInfinity, double.PositiveInfinity);

    // The last value in an order at which something holds without a gap, followed along the line to where it ends.
    private double? Reached(ImmutableArray<double> order, Func<double, bool> holds)
    {
        int held = 0;
        while (held < order.Length && holds(order[held]))
        {
            held++;
        }

        return held == 0 ? null
            : held == order.Length || !_level!.Between ? order[held - 1] : Crossing(order[held - 1], order[held], holds);
    }

    private static double Crossing(double held, double gone, Func<double, bool> holds)
    {
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (held + gone) / 2;
            (held, gone) = holds(middle) ? (middle, gone) : (held, middle);
        }

        return held;
    }
}
