using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Uncertainty;

namespace SweepStats.Shielding;

/// <summary>What a steady voltage of unknown phase beside the specimen's signal does to an interval.</summary>
/// <remarks>
/// Behind a level s stands a signal between 20·log10(10^(s/20) − 10^(l/20)) and 20·log10(10^(s/20) + 10^(l/20)), with l the
/// leakage; the error of the level is an arcsine one of about that reach (<see cref="VoltageSum"/>). The reach is taken at the
/// ends of the interval that scatter and noise leave, and added by its own distribution (<see cref="WidenedInterval"/>). Where
/// the leakage alone could make the level the signal may be absent, and the upper end is open. The estimate stays: over all
/// phases the mean of log|signal + leakage| is the larger of the two. The same voltage stands in the reference. Of a leakage that
/// noise may hide the upper limit is taken. Source of the mean: Jensen's formula, Acta Mathematica 22 (1899), 359 (from memory).
/// </remarks>
internal static class LeakageLaw
{
    private static readonly SystematicError UnitArcsine =
        new([new UncertaintyEntry { Name = "phase", HalfWidthDb = 1, Distribution = ErrorDistribution.Arcsine }]);

    // Standard deviation of a level in dB with noise as strong as itself beside it, to first order: (20/ln 10)/√2.
    private const double UnitDeviationDb = 6.141851463713754;

    /// <summary>Standard uncertainty in dB of a level beside which noise of unknown phase stands, to first order.</summary>
    /// <param name="overLevelDb">Level of the noise over the level, in dB.</param>
    public static double NoiseOnALevelDb(double overLevelDb) => UnitDeviationDb * Math.Pow(10, overLevelDb / 20);

    /// <summary>Two-sided limits with the leakage in them.</summary>
    /// <param name="limits">Limits from scatter, noise and stated errors.</param>
    /// <param name="levels">The levels behind them.</param>
    /// <param name="probability">Probability below the upper end.</param>
    public static ShieldingLimits Widened(in ShieldingLimits limits, in ReadingLevels levels, double probability)
    {
        if (levels.Leakage.IsNone)
        {
            return limits;
        }

        double half = HalfWidthDb(limits.SeDb, levels);
        double uncertainty = Math.Sqrt((limits.StandardUncertaintyDb * limits.StandardUncertaintyDb) + (half * half / 2));
        double grown = limits.StandardUncertaintyDb == 0 ? 1 : uncertainty / limits.StandardUncertaintyDb;
        return limits with
        {
            LowDb = Low(limits, levels, probability),
            HighDb = High(limits, levels, probability),
            StandardUncertaintyDb = uncertainty,
            DegreesOfFreedom = limits.DegreesOfFreedom * grown * grown * grown * grown,
        };
    }

    /// <summary>Lower limit with the leakage in it.</summary>
    public static double Low(in ShieldingLimits limits, in ReadingLevels levels, double probability)
    {
        if (levels.Leakage.IsNone || !double.IsFinite(limits.LowDb))
        {
            return limits.LowDb;
        }

        double leakage = Most(levels, probability);
        double strongest = levels.Reference.MeanDb - limits.LowDb;
        double reach = Over(strongest, leakage) + Over(levels.Reference.MeanDb, leakage);
        return double.IsFinite(limits.SeDb) ? limits.SeDb - Together(limits.SeDb - limits.LowDb, reach, limits, probability)
            : limits.LowDb - reach;
    }

    /// <summary>Upper limit with the leakage in it; infinite where the leakage alone could make the level.</summary>
    public static double High(in ShieldingLimits limits, in ReadingLevels levels, double probability)
    {
        if (levels.Leakage.IsNone)
        {
            return limits.HighDb;
        }

        double leakage = Most(levels, probability);
        double weakest = levels.Reference.MeanDb - limits.HighDb;
        if (!(weakest > leakage) || !double.IsFinite(limits.SeDb))
        {
            return double.PositiveInfinity;
        }

        double reach = Under(weakest, leakage) + Over(levels.Reference.MeanDb, leakage);
        return limits.SeDb + Together(limits.HighDb - limits.SeDb, reach, limits, probability);
    }

    /// <summary>
    /// Half-width of the arcsine error at the estimate in dB; 0 where the leakage alone could make the level, since there is no
    /// estimate then.
    /// </summary>
    public static double HalfWidthDb(double seDb, in ReadingLevels levels)
    {
        double signal = levels.Reference.MeanDb - seDb, leakage = levels.Leakage.LimitDb;
        return signal > leakage
            ? ((Over(signal, leakage) + Under(signal, leakage)) / 2) + Over(levels.Reference.MeanDb, leakage) : 0;
    }

    // A leakage beyond its limit is missed only at the phases near the worst, one in four or so: with a one-sided limit of the
    // interval's own level less than half of what the interval grants is missed (simulated; reports/benches/study.md).
    private static double Most(in ReadingLevels levels, double probability) =>
        levels.Leakage.Below(Math.Max((2 * probability) - 1, Confidence.NearlyEven));

    private static double Together(double half, double reach, in ShieldingLimits limits, double probability) =>
        reach * UnitArcsine.Widened(probability).Half(half / reach, limits.DegreesOfFreedom);

    // How far the signal may lie above and below a level that holds it and the leakage, in dB.
    private static double Over(double level, double leakage) => VoltageSum.Apart(new Decibels(level - leakage)).High.Value;

    private static double Under(double level, double leakage) => -VoltageSum.Apart(new Decibels(level - leakage)).Low.Value;
}
