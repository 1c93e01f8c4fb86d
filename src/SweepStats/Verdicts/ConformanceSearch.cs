using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Verdicts;

/// <summary>Finds the one-sided level at which a limit equals the requirement.</summary>
/// <remarks>
/// Limits are computed on a ladder of levels, since each level costs a table where errors are stated, and interpolated between
/// two rungs over Student's t for the reading's degrees of freedom. Error: none where the limit runs straight over t, as it does
/// far above the floor without stated errors. Beyond the ladder, and where the next rung has no finite limit, only a bound is
/// given. The level of the rule is a rung, so that the probability never contradicts the outcome. Where several ways of averaging
/// have to be reckoned with it is the probability, on either side of 0.5, that decides less.
/// </remarks>
internal sealed class ConformanceSearch
{
    private static readonly double[] Usual = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.975, 0.99, 0.999];

    private readonly OneSidedLimits _limits;
    private readonly ImmutableArray<double> _rungs;
    private readonly ImmutableArray<StudentQuantile> _scores;
    private readonly int _ruleRung;

    /// <summary>Lays out the ladder of levels, that of the rule among them, for one curve's limits.</summary>
    public ConformanceSearch(OneSidedLimits limits, double ruleLevel)
    {
        _limits = limits;
        _rungs = [.. Usual.Append(ruleLevel).Distinct().Order()];
        _scores = [.. _rungs.Select(StudentQuantile.Of)];
        _ruleRung = _rungs.IndexOf(ruleLevel);
    }

    /// <summary>The probability; null where only a bound is known and does not reach the requirement.</summary>
    /// <param name="reading">The reading, with repeats.</param>
    /// <param name="f">Where it stands in the curve.</param>
    /// <param name="wanted">Requirement in dB.</param>
    /// <param name="atRule">
    /// Its limits at the level of the rule; the upper one may be left out where the lower one reaches the requirement.
    /// </param>
    public ConformanceProbability? Of(ShieldingReading reading, int f, double wanted, Interval atRule)
    {
        var lower = new Side(f, wanted, Upper: false, atRule.Low - wanted, GuessedRung(reading, wanted),
            Freedom(reading.Evidence));
        if (reading is not ShieldingReading.Measured { Shielding.Value: var estimate })
        {
            return reading.Evidence.OneSidedLow?.Value >= wanted && Highest(lower) is { } reached
                ? new ConformanceProbability(reached.Least, 1) : null;
        }

        if (atRule.Low >= wanted || (atRule.High >= wanted && estimate.Value >= wanted))
        {
            return Highest(lower) ?? ConformanceProbability.Of(0.5);
        }

        Side upper = lower with { Upper = true, AtRule = wanted - atRule.High };
        return Highest(upper) is { } fails ? new ConformanceProbability(1 - fails.Most, 1 - fails.Least)
            : ConformanceProbability.Of(0.5);
    }

    // To first order; the search starts there and most often ends there.
    private int GuessedRung(ShieldingReading reading, double wanted)
    {
        int rung = _rungs.Length - 1;
        if (reading is ShieldingReading.Measured { Shielding.Value: var value }
            && reading.Evidence.StandardUncertaintyDb is { } uncertainty)
        {
            double score = Math.Abs(value.Value - wanted) / uncertainty;
            while (rung > 0 && score < _scores[rung].At(Freedom(reading.Evidence)))
            {
                rung--;
            }
        }

        return rung;
    }

    private static double Freedom(ReadingEvidence evidence) => evidence.DegreesOfFreedom ?? double.PositiveInfinity;

    private double Distance(in Side side, double level) =>
        side.Upper ? side.Wanted - _limits.High(side.F, level) : _limits.Low(side.F, level) - side.Wanted;

    /// <summary>
    /// The highest level at which the limit is still on its side of the requirement; null where it is on no rung.
    /// </summary>
    private ConformanceProbability? Highest(in Side side)
    {
        Rung on = new(-1, double.NaN), off = new(_rungs.Length, double.NaN), probe = new(_ruleRung, side.AtRule);
        while (true)
        {
            _ = side.Holds(probe.Distance) ? on = probe : off = probe;
            if (off.Place - on.Place <= 1)
            {
                break;
            }

            int next = Inside(side.Guess) ? side.Guess : Inside(side.Guess + 1) ? side.Guess + 1 : (on.Place + off.Place) / 2;
            probe = new Rung(next, Distance(side, _rungs[next]));
        }

        bool Inside(int rung) => rung > on.Place && rung < off.Place;
        return on.Place < 0 ? null
            : double.IsFinite(on.Distance) && double.IsFinite(off.Distance) ? Between(on, off, side.Freedom)
            : new ConformanceProbability(_rungs[on.Place], 1);
    }

    private ConformanceProbability Between(Rung on, Rung off, double freedom)
    {
        (double low, double high) = (_rungs[on.Place], _rungs[off.Place]);
        (double from, double to) = (_scores[on.Place].At(freedom), _scores[off.Place].At(freedom));
        double score = from + ((to - from) * on.Distance / (on.Distance - off.Distance));
        double probability = on.Distance == off.Distance ? low : 1 - StudentT.UpperTail(score, freedom);
        return ConformanceProbability.Of(Math.Clamp(probability, low, Math.BitDecrement(high)));
    }

    /// <summary>A rung of the ladder, and how far the limit there lies on its side of the requirement, in dB.</summary>
    private readonly record struct Rung(int Place, double Distance);

    /// <summary>One side of the requirement at one frequency.</summary>
    /// <param name="F">Place of the frequency.</param>
    /// <param name="Wanted">Requirement in dB.</param>
    /// <param name="Upper">
    /// Whether the upper limit is asked, to lie below the requirement; else the lower one, to reach it.
    /// </param>
    /// <param name="AtRule">How far the limit lies on its side at the level of the rule, in dB.</param>
    /// <param name="Guess">Rung to try first.</param>
    /// <param name="Freedom">Degrees of freedom of the reading.</param>
    private readonly record struct Side(int F, double Wanted, bool Upper, double AtRule, int Guess, double Freedom)
    {
        /// <summary>Whether a distance in dB is on this side: a lower limit may equal the requirement, an upper not.</summary>
        public bool Holds(double distance) => Upper ? distance > 0 : distance >= 0;
    }
}
