using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>Limits where no floor is known: Welch's interval for the difference of the readings as they are.</summary>
/// <remarks>Noise only adds to the covered reading, so the lower limit holds all the same; the upper one does not.</remarks>
internal static class WithoutFloor
{
    /// <summary>Difference of the log means in dB with its two-sided interval, stated errors and leakage in it.</summary>
    public static ShieldingLimits Limits(in ReadingLevels levels, Confidence confidence)
    {
        double reach = Reach(levels, confidence.TwoSidedQuantile);
        double se = levels.Reference.MeanDb - levels.Covered.MeanDb;
        ReadOnlySpan<Contribution> parts = [levels.Reference.Error, levels.Covered.Error,
            new Contribution(levels.TypeB.StandardUncertainty, levels.TypeB.DegreesOfFreedom)];
        var limits = new ShieldingLimits(
            se, se - reach, se + reach, WelchSatterthwaite.Combined(parts),
            CoverageFreedom.OfAll(parts, new(levels.Reference, 1), new(levels.Covered, 1)));
        return LeakageLaw.Widened(limits, levels, confidence.TwoSidedQuantile);
    }

    /// <summary>Lower limit in dB at a one-sided level; a level below one half counts as just above it.</summary>
    public static double OneSidedLow(in ReadingLevels levels, Confidence confidence)
    {
        double probability = Math.Max(confidence.Level, Confidence.NearlyEven);
        double se = levels.Reference.MeanDb - levels.Covered.MeanDb, reach = Reach(levels, probability);
        var limits = new ShieldingLimits(
            se, se - reach, se + reach, 0, CoverageFreedom.Of(new(levels.Reference, 1), new(levels.Covered, 1)));
        return LeakageLaw.Low(limits, levels, probability);
    }

    private static double Reach(in ReadingLevels levels, double probability)
    {
        ReadOnlySpan<Contribution> repeats = [levels.Reference.Error, levels.Covered.Error];
        double dof = CoverageFreedom.Of(new(levels.Reference, 1), new(levels.Covered, 1));
        return levels.TypeB.Widened(probability)
            .Half(WelchSatterthwaite.Combined(repeats) * StudentQuantile.Of(probability).At(dof), dof);
    }
}
