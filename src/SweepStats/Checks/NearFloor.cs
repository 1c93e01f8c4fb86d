using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Readings that had to be corrected for the floor.</summary>
internal sealed class NearFloor : ICheck
{
    // Farther up it is leakage that a reading is near to.
    private const double NearDb = 10;

    /// <inheritdoc/>
    public string Code => "near-floor";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (ShieldingCurve curve in seen.Curves)
        {
            bool At(int f) =>
                curve.Readings.Mark(f).State == ShieldingState.NearFloor
                && curve.Readings[f].Evidence is { LeakageRules: false } seenThere
                && seenThere.CoveredDb - seenThere.FloorDb < NearDb;
            var near = Enumerable.Range(0, curve.Readings.Length).Where(At).Select(f => curve.Readings[f]).ToList();
            if (near.Count == 0)
            {
                continue;
            }

            double largest = near.Max(Correction);
            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Note,
                Role = SweepRole.Covered,
                Specimen = curve.Name,
                Where = Stretches.Where(seen.Campaign.Grid, At),
                Size = new Decibels(largest),
                Message = $"At {Amount.OutOf(near.Count, curve.Readings.Length)} the covered level is within 10 dB of the "
                    + $"floor; the noise in it was taken out, by up to {Amount.Db(largest)}, and what it may have been makes "
                    + "the figures less sure.",
                Basis = string.Create(Amount.Print, $"Covered less floor: lowest "
                    + $"{near.Min(r => r.Evidence.CoveredDb - r.Evidence.FloorDb!.Value):0.0} dB, against 10 dB; what noise "
                    + $"adds follows from the rise over the floor and the looks of the detector."),
                NextStep = "Nothing, unless narrower intervals are wanted there: then make more range or average more.",
            };
        }
    }

    // How far the corrected shielding lies above the plain difference of the levels.
    private static double Correction(ShieldingReading reading)
    {
        double plain = reading.Evidence.ReferenceDb - reading.Evidence.CoveredDb;
        return reading switch
        {
            ShieldingReading.Measured m => m.Shielding.Value.Value - plain,
            ShieldingReading.Unrepeated u => u.Indication.Value - plain,
            _ => 0,
        };
    }
}
