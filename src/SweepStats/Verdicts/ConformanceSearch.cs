using System.Collections.Immutable;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Verdicts;

/// <summary>Finds the one-sided level at which a limit equals the requirement.</summary>
/// <remarks>
/// Limits are computed on a ladder of levels, since each level costs a table where errors are stated, and interpolated between two rungs over Student's t for
/// the reading's degrees of freedom. Error: none where the limit runs straight over t, as it does far above the floor without stated errors. Beyond the
/// ladder, and where the next rung has no finite limit, only a bound is given. The level of the rule is a rung, so that the probability never contradicts the outcome.
/// Where several ways of averaging have to be reckoned with it is the probability, on either side of 0.5, that decides less.
/// </remarks>
internal sealed class ConformanceSearch
{
    private static readonly double[] Usual = [0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.975, 0.99, 0.999];

    private readonly OneSidedLimits _limits;
    private readonly ImmutableArray<double> _rungs;
    private readonly int _ruleRung;

    public ConformanceSearch(OneSidedLimits limits, double ruleLevel)
    {
        _limits = limits;
        _rungs = [.. Usual.Append(ruleLevel).Distinct().Order()];
        _ruleRung = _rungs.IndexOf(ruleLevel);
    }

    /// <summary>The probability; null where only a bound is known and does not reach the requirement.</summary>
    /// <param name="reading">The reading, with repeats.</param>
    /// <param name="f">Where it stands in the curve.</param>
    /// <param name="wanted">Requirement in dB.</param>
    /// <param name="atRule">Its limits at the level of the rule.</param>
    public ConformanceProbability? Of(ShieldingReading reading, int f, double wanted, (double Low, double High) atRule)
    {
        var lower = new Side(level => _limits.At(f, level).Low - wanted, atRule.Low - wanted, reading.Evidence, Guess(reading, wanted), Strict: false);
        if (reading is not ShieldingReading.Measured { Shielding.Value: var estimate })
        {
            return reading.Evidence.OneSidedLow?.Value >= wanted && Highest(lower) is { } reached ? new ConformanceProbability(reached.Least, 1) : null;
        }

        if (atRule.Low >= wanted || (atRule.High >= wanted && estimate.Value >= wanted))
        {
            return Highest(lower) ?? ConformanceProbability.Of(0.5);
        }

        var upper = new Side(level => wanted - _limits.At(f, level).High, wanted - atRule.High, reading.Evidence, Guess(reading, wanted), Strict: true);
        return Highest(upper) is { } fails ? new ConformanceProbability(1 - fails.Most, 1 - fails.Least) : ConformanceProbability.Of(0.5);
    }

    // To first order; the search starts there and most often ends there.
    private static double Guess(ShieldingReading reading, double wanted) => reading is ShieldingReading.Measured { Shielding.Value: var value }
        && Math.Abs(value.Value - wanted) / reading.Evidence.StandardUncertaintyDb is { } score && double.IsFinite(score)
        ? 1 - StudentT.UpperTail(score, Freedom(reading.Evidence)) : 1;

    private static double Freedom(ReadingEvidence evidence) => evidence.DegreesOfFreedom ?? double.PositiveInfinity;

    /// <summary>The highest level at which the limit is still on its side of the requirement; null where it is on no rung.</summary>
    private ConformanceProbability? Highest(Side side)
    {
        (int Rung, double Distance) on = (-1, double.NaN), off = (_rungs.Length, double.NaN);
        (int probe, double distance) = (_ruleRung, side.AtRule);
        int guess = _rungs.Count(r => r <= side.Guess) - 1;
        while (true)
        {
            _ = side.Holds(distance) ? on = (probe, distance) : off = (probe, distance);
            if (off.Rung - on.Rung <= 1)
            {
                break;
            }

            probe = Inside(guess) ? guess : Inside(guess + 1) ? guess + 1 : (on.Rung + off.Rung) / 2;
            distance = side.Distance(_rungs[probe]);
        }

        bool Inside(int rung) => rung > on.Rung && rung < off.Rung;
        return on.Rung < 0 ? null
            : double.IsFinite(on.Distance) && double.IsFinite(off.Distance) ? Between(on, off, Freedom(side.Evidence)) : new ConformanceProbability(_rungs[on.Rung], 1);
    }

    private ConformanceProbability Between((int Rung, double Distance) on, (int Rung, double Distance) off, double freedom)
    {
        (double low, double high) = (_rungs[on.Rung], _rungs[off.Rung]);
        (double from, double to) = (StudentT.Quantile(low, freedom), StudentT.Quantile(high, freedom));
        double score = from + ((to - from) * on.Distance / (on.Distance - off.Distance));
        double probability = on.Distance == off.Distance ? low : 1 - StudentT.UpperTail(score, freedom);
        return ConformanceProbability.Of(Math.Clamp(probability, low, Math.BitDecrement(high)));
    }

    /// <summary>One side of the requirement: how far a limit lies on it, in dB, at a level.</summary>
    private sealed record Side(Func<double, double> Distance, double AtRule, ReadingEvidence Evidence, double Guess, bool Strict)
    {
        public bool Holds(double distance) => Strict ? distance > 0 : distance >= 0;
    }
}
