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

    // A single sweep shows no scatter of its own.
    private const double SingleSweepDb = 2;

    // As much as receivers and cables move between two roles of an untouched set-up (as for a single floor sweep; common
    // practice, no source), and what nobody would act upon.
    private const double MaterialDb = 0.5;
    private const double WorthTellingDb = 0.1;

    // A passive sheet may focus at a resonance; twice the power over most of the band says that the sweeps are not what they are
    // said to be (judgement, no source).
    private const double ImpossibleDb = 3;

    /// <inheritdoc/>
    public string Code => "negative-shielding";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) =>
        seen.Curves.Any(c => c.Readings.Any(r => r is ShieldingReading.Measured or ShieldingReading.Unrepeated)) ? null
            : "no shielding is known from above";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (ShieldingCurve curve in seen.Curves)
        {
            bool[] below = Below(curve, seen.Curves.Length * curve.Readings.Length);
            int[] material = Between(curve, below, double.NegativeInfinity, -MaterialDb);
            int[] slight = Between(curve, below, -MaterialDb, -WorthTellingDb);
            if (material.Length > 0)
            {
                int impossible = material.Count(f => Value(curve.Readings[f]) < -ImpossibleDb);
                yield return Negative(seen, curve, material, 2 * impossible > below.Length ? Severity.Fault : Severity.Warning);
            }

            if (slight.Length > 0)
            {
                yield return Negative(seen, curve, slight, Severity.Note);
            }
        }
    }

    // A shortfall beyond scatter is told by its size: many sweeps make hundredths of a dB significant.
    private static int[] Between(ShieldingCurve curve, bool[] below, double over, double under) =>
    [
        .. from f in Enumerable.Range(0, below.Length)
           where below[f]
           let value = Value(curve.Readings[f])!.Value
           where value > over && value <= under
           select f,
    ];

    private Finding Negative(Evidence seen, ShieldingCurve curve, int[] here, Severity severity)
    {
        double lowest = here.Min(f => Value(curve.Readings[f])!.Value);
        return new Finding
        {
            Code = Code,
            Severity = severity,
            Role = SweepRole.Covered,
            Specimen = curve.Name,
            Where = Stretches.Where(seen.Campaign.Grid, here.Contains),
            Size = new Decibels(lowest),
            Message = $"At {Amount.OutOf(here.Length, curve.Readings.Length)} more arrives with the specimen than without it, "
                + $"by up to {Amount.Db(-lowest)}, {Beyond(curve, here)}."
                + (severity == Severity.Note ? $" Up to {Amount.Db(MaterialDb)} may come from cables and a receiver that moved."
                    : string.Empty),
            Basis = string.Create(Amount.Print, $"Lowest shielding {lowest:0.0} dB; told where the upper limit lies below 0 dB "
                + $"at a level that a specimen without any shielding passes somewhere in {FalseAlarm * 100:0.#} % of campaigns, "
                + $"a warning from {MaterialDb} dB on, a note from {WorthTellingDb} dB on; from single sweeps, below "
                + $"-{SingleSweepDb:0} dB."),
            NextStep = ExchangedPlate.IsLikely(seen) ? ExchangedPlate.NextStep
                : "Look whether reference and covered sweeps were exchanged, whether source or cables moved, and whether the "
                    + "specimen resonates with its holder.",
        };
    }

    private static string Beyond(ShieldingCurve curve, int[] here) =>
        here.All(f => curve.Readings[f] is ShieldingReading.Unrepeated)
            ? $"more than the {SingleSweepDb:0} dB that are granted to single sweeps"
            : "beyond what scatter explains";

    // At 95 % each, one in forty frequencies of a specimen that shields nothing would be accused.
    private static bool[] Below(ShieldingCurve curve, int asked)
    {
        var below = new bool[curve.Readings.Length];
        ImmutableArray<ReadingEstimator> estimators = [];
        var ends = new CurveEnds(curve);
        for (int f = 0; f < below.Length; f++)
        {
            if (!(curve.Readings.ValuesDb[f] < 0))
            {
                continue;
            }

            if (curve.Readings[f] is ShieldingReading.Measured { Shielding.High.Value: < 0 } && curve.Levels is { } levels)
            {
                estimators = estimators.IsEmpty ? levels.Estimators(new Confidence(1 - (2 * FalseAlarm / asked))) : estimators;
                below[f] = ends.High(f, estimators) < 0;
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
