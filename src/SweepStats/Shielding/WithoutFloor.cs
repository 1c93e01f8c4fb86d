using SweepStats.Statistics;

namespace SweepStats.Shielding;

/// <summary>Limits where no floor is known: Welch's interval for the difference of the readings as they are.</summary>
/// <remarks>Noise only adds to the covered reading, so the lower limit holds all the same; the upper one does not.</remarks>
internal static class WithoutFloor
{
    public static ShieldingLimits Limits(ReadingLevels levels, Confidence confidence)
    {
        ReadOnlySpan<Contribution> parts = [levels.Reference.Error, levels.Covered.Error, levels.TypeB];
        double se = levels.Reference.MeanDb - levels.Covered.MeanDb;
        double combined = WelchSatterthwaite.Combined(parts);
        double dof = WelchSatterthwaite.DegreesOfFreedom(parts);
        double reach = combined * StudentT.Quantile(confidence.TwoSidedQuantile, dof);
        return new ShieldingLimits(se, se - reach, se + reach, combined, dof);
    }

    public static double OneSidedLow(ReadingLevels levels, Confidence confidence)
    {
        ShieldingLimits limits = Limits(levels, confidence);
        return limits.SeDb - (limits.StandardUncertaintyDb * StudentT.Quantile(confidence.Level, limits.DegreesOfFreedom));
    }
}
