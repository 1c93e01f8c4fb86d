using SweepStats.Bands;
using SweepStats.Statistics;

namespace SweepStats.Choice;

/// <summary>How much less than the yardstick a specimen shields.</summary>
internal static class YardstickDifference
{
    /// <summary>Yardstick less specimen in dB; a side on which either is not bounded stays open.</summary>
    public static BandFigure Of(CandidateMean yardstick, CandidateMean specimen, Confidence level)
    {
        (double error, double dof) = yardstick.ErrorOfDifference(specimen);
        double apart = yardstick.Value - specimen.Value;
        if (!double.IsFinite(apart))
        {
            return default;
        }

        double reach = (error > 0 ? error * StudentQuantile.Of(level.TwoSidedQuantile).At(dof) : 0)
            + Math.Abs(yardstick.Shift - specimen.Shift);
        return new BandFigure(
            yardstick.Open || specimen.Open ? null : apart,
            specimen.Open ? null : apart - reach,
            yardstick.Open ? null : apart + reach);
    }
}
