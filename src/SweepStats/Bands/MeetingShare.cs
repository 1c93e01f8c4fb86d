using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Bands;

/// <summary>Share of the band that meets a requirement.</summary>
/// <remarks>
/// A share has no smooth error. Its limits are the share shown to meet and the share not shown to fail, by limits of one-sided level α/2m at each of the m
/// frequencies asked about: with the confidence stated none of them is wrong.
/// </remarks>
internal static class MeetingShare
{
    public static BandFigure? Of(ShieldingCurve curve, double[] weights, Requirement requirement, Confidence confidence)
    {
        int count = curve.Readings.Count(r => requirement.At(r.Evidence.At) is not null);
        if (count == 0 || curve.Levels is null)
        {
            return null;
        }

        var strict = new Confidence(1 - ((1 - confidence.Level) / count));
        var estimators = curve.Levels.Estimators(strict);
        double asked = 0, met = 0, shown = 0, possible = 0;
        bool open = false, repeated = true;
        for (int f = 0; f < weights.Length; f++)
        {
            ShieldingReading reading = curve.Readings[f];
            if (requirement.At(reading.Evidence.At) is not { } wanted)
            {
                continue;
            }

            (double low, double high) = curve.Levels.Ends(f, estimators, reading.Evidence.Ambient);
            double value = Value(reading);
            asked += weights[f];
            met += value >= wanted.Value || (double.IsNaN(value) && low >= wanted.Value) ? weights[f] : 0;
            shown += low >= wanted.Value ? weights[f] : 0;
            possible += high >= wanted.Value ? weights[f] : 0;
            open |= double.IsNaN(value) && low < wanted.Value;
            repeated &= reading is not ShieldingReading.Unrepeated;
        }

        if (asked == 0)
        {
            return null;
        }

        double? estimate = open ? null : met / asked;
        return repeated ? new BandFigure(estimate, shown / asked, possible / asked) : new BandFigure(estimate, null, null);
    }

    // A bound has no value; whether it meets is for its limit to say.
    private static double Value(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m => m.Shielding.Value.Value,
        ShieldingReading.Unrepeated u => u.Indication.Value,
        _ => double.NaN,
    };
}
