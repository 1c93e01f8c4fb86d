using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>A specimen that seems to amplify: a resonance, or sweeps that were exchanged.</summary>
internal sealed class NegativeShielding : ICheck
{
    public string Code => "negative-shielding";

    public string? UntestedBecause(Evidence seen) =>
        seen.Curves.Any(c => c.Readings.Any(r => r is ShieldingReading.Measured or ShieldingReading.Unrepeated)) ? null : "no shielding is known from above";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (ShieldingCurve curve in seen.Curves)
        {
            double HighEnd(int f) => curve.Readings[f] switch
            {
                ShieldingReading.Measured m => m.Shielding.High.Value,
                ShieldingReading.Unrepeated u => u.Indication.Value,
                _ => double.PositiveInfinity,
            };
            int count = Enumerable.Range(0, curve.Readings.Length).Count(f => HighEnd(f) < 0);
            if (count == 0)
            {
                continue;
            }

            yield return new Finding
            {
                Code = Code,
                Severity = Severity.Warning,
                Role = SweepRole.Covered,
                Specimen = curve.Name,
                Where = Stretches.Where(seen.Campaign.Grid, f => HighEnd(f) < 0),
                Size = new Decibels(Enumerable.Range(0, curve.Readings.Length).Min(HighEnd)),
                Message = $"At {Amount.OutOf(count, curve.Readings.Length)} more arrives with the specimen than without it, beyond what scatter explains.",
                Basis = string.Create(CultureInfo.InvariantCulture, $"Upper limit, or the difference where there is one sweep: lowest {Enumerable.Range(0, curve.Readings.Length).Min(HighEnd):0.0} dB, against 0 dB."),
                NextStep = "Look whether reference and covered sweeps were exchanged, whether source or cables moved, and whether the specimen resonates with its holder.",
            };
        }
    }
}
