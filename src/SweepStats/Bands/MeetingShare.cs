using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Bands;

/// <summary>Share of the band that meets a requirement.</summary>
/// <remarks>
/// A share has no smooth error. Its limits are the share shown to meet and the share not shown to fail, by limits of one-sided
/// level α/2m at each of the m frequencies asked about: with the confidence stated none of them is wrong. As in the verdict, what
/// is shown to meet reaches the guard band over the requirement and what is shown to fail lies below the requirement itself. The
/// level is that of the intervals, since these limits are one.
/// </remarks>
internal static class MeetingShare
{
    /// <summary>
    /// Level of the limits at one frequency, which hold at all frequencies together; null where nothing is asked.
    /// </summary>
    public static Confidence? Strict(ShieldingCurve curve, DecisionRule rule, Confidence confidence)
    {
        int count = curve.Readings.Count(r => rule.Requirement.At(r.Evidence.At) is not null);
        return count == 0 ? null : new Confidence(1 - ((1 - confidence.Level) / count));
    }

    /// <param name="curve">The specimen.</param>
    /// <param name="weights">Weights of the frequencies.</param>
    /// <param name="rule">What is asked.</param>
    /// <param name="ends">Limits of the <see cref="Strict"/> level.</param>
    public static BandFigure? Of(ShieldingCurve curve, double[] weights, DecisionRule rule, Interval[] ends)
    {
        double asked = 0, met = 0, shown = 0, possible = 0;
        bool open = false, repeated = true;
        for (int f = 0; f < weights.Length; f++)
        {
            ShieldingReading reading = curve.Readings[f];
            if (rule.Requirement.At(reading.Evidence.At) is not { } wanted)
            {
                continue;
            }

            (double low, double high) = ends[f];
            bool? meets = Meets(reading, wanted);
            asked += weights[f];
            met += meets == true ? weights[f] : 0;
            shown += low >= wanted.Value + rule.GuardBand.Value ? weights[f] : 0;
            possible += high >= wanted.Value ? weights[f] : 0;
            open |= meets is null;
            repeated &= reading is not ShieldingReading.Unrepeated;
        }

        if (asked == 0)
        {
            return null;
        }

        double? estimate = open ? null : met / asked;
        return repeated ? new BandFigure(estimate, shown / asked, possible / asked) : new BandFigure(estimate, null, null);
    }

    // A bound below what is asked leaves the question open.
    private static bool? Meets(ShieldingReading reading, Decibels wanted) => reading switch
    {
        ShieldingReading.Measured m => m.Shielding.Value >= wanted,
        ShieldingReading.Unrepeated u => u.Indication >= wanted,
        ShieldingReading.AtLeast b when b.Bound >= wanted => true,
        _ => null,
    };
}
