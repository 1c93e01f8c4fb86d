using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Levels shown in steps so coarse that they matter.</summary>
internal sealed class Quantised : ICheck
{
    // A step of 0.1 dB adds 0.03 dB: nothing to tell anybody.
    private const double WorthTellingDb = 0.05;

    public string Code => "quantised";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        double worst = seen.Curves.Select(c => c.RoundingDb).DefaultIfEmpty().Max();
        if (worst < WorthTellingDb)
        {
            yield break;
        }

        ShieldingCurve curve = seen.Curves.First(c => c.RoundingDb == worst);
        yield return new Finding
        {
            Code = Code,
            Severity = Severity.Note,
            Role = SweepRole.Covered,
            Size = new Decibels(worst),
            Message = $"Levels come in steps of {Amount.Db(worst * Math.Sqrt(12))} ({curve.Name}): rounding adds {worst.ToString("0.00", CultureInfo.InvariantCulture)} dB of standard uncertainty to each level, however many sweeps are taken.",
            Basis = string.Create(CultureInfo.InvariantCulture, $"A step q has a standard uncertainty of q/√12 (JCGM 100, F.2.2.1), here {worst:0.000} dB; told from {WorthTellingDb} dB on."),
            NextStep = "Export the levels with more digits, or with a finer scale on the display.",
        };
    }
}
