using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>A specimen that seems to amplify: a resonance, or sweeps that were exchanged.</summary>
internal sealed class NegativeShielding : ICheck
{
    // Chance of an accusation, over all frequencies, where the specimen shields nothing.
    private const double FalseAlarm = 0.005;

    // Hundredths of a dB below zero are what cables and temperature do while sweeps are taken, and no sign of anything exchanged.
    private const double WarnedFromDb = 0.5;

    // A single sweep shows no scatter of its own.
    private const double SingleSweepDb = 2;

    public string Code => "negative-shielding";

    public string? UntestedBecause(Evidence seen) =>
        seen.Curves.Any(c => c.Readings.Any(r => r is ShieldingReading.Measured or ShieldingReading.Unrepeated)) ? null : "no shielding is known from above";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (ShieldingCurve curve in seen.Curves)
        {
            bool[] below = Below(curve);
            int count = below.Count(b => b);
            if (count == 0)
            {
                continue;
            }

            double lowest = Enumerable.Range(0, below.Length).Where(f => below[f]).Min(f => Value(curve.Readings[f])!.Value);
            yield return new Finding
            {
                Code = Code,
                Severity = lowest <= -WarnedFromDb ? Severity.Warning : Severity.Note,
                Role = SweepRole.Covered,
                Specimen = curve.Name,
                Where = Stretches.Where(seen.Campaign.Grid, f => below[f]),
                Size = new Decibels(lowest),
                Message = $"At {Amount.OutOf(count, curve.Readings.Length)} more arrives with the specimen than without it, beyond what scatter explains.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"Lowest shielding {lowest:0.0} dB; told where the upper limit lies below 0 dB at a level that a specimen without any shielding passes somewhere in {FalseAlarm * 100:0.#} % of campaigns; from single sweeps, below -{SingleSweepDb:0} dB."),
                NextStep = "Look whether reference and covered sweeps were exchanged, whether source or cables moved, and whether the specimen resonates with its holder.",
            };
        }
    }

    // At 95 % each, one in forty frequencies of a specimen that shields nothing would be accused.
    private static bool[] Below(ShieldingCurve curve)
    {
        var below = new bool[curve.Readings.Length];
        ImmutableArray<ReadingEstimator> estimators = [];
        for (int f = 0; f < below.Length; f++)
        {
            if (curve.Readings[f] is ShieldingReading.Measured { Shielding.High.Value: < 0 } && curve.Levels is { } levels)
            {
                estimators = estimators.IsEmpty ? levels.Estimators(new Confidence(1 - (2 * FalseAlarm / below.Length))) : estimators;
                below[f] = curve.Ends(f, estimators).High < 0;
            }
            else if (curve.Readings[f] is ShieldingReading.Unrepeated { Indication.Value: < -SingleSweepDb })
            {
                below[f] = true;
            }
        }

        return below;
    }

    private static double? Value(ShieldingReading reading) => reading switch
    {
        ShieldingReading.Measured m => m.Shielding.Value.Value,
        ShieldingReading.Unrepeated u => u.Indication.Value,
        _ => null,
    };
}
