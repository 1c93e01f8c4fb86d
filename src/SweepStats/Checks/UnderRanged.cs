using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Shielding;

namespace SweepStats.Checks;

/// <summary>The set-up cannot show what is asked of it.</summary>
internal sealed class UnderRanged : ICheck
{
    private const double LeastRiseDb = 10;

    public string Code => "under-ranged";

    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen);

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (ShieldingCurve curve in seen.Curves)
        {
            int count = Enumerable.Range(0, curve.Readings.Length).Count(f => Missing(seen, curve, f) > 0);
            if (count == 0)
            {
                continue;
            }

            double most = Enumerable.Range(0, curve.Readings.Length).Max(f => Missing(seen, curve, f));
            bool dead = curve.Readings.All(r => r.Evidence.ReferenceInFloor);
            yield return new Finding
            {
                Code = Code,
                Severity = dead ? Severity.Fault : Severity.Warning,
                Specimen = curve.Name,
                Where = Stretches.Where(seen.Campaign.Grid, f => Missing(seen, curve, f) > 0),
                Size = new Decibels(most),
                Message = dead
                    ? "The reference nowhere rises 10 dB over the floor: this set-up shows nothing of the shielding."
                    : $"At {Amount.OutOf(count, curve.Readings.Length)} the usable dynamic range falls short, by up to {Amount.Db(most)}, of what is asked: the requirement with a margin of {Amount.Db(seen.Margin.Value)}, or a reference 10 dB over the floor.",
                Basis = Basis(seen, curve),
                NextStep = dead && curve.Readings.All(r => r.Evidence.ReferenceDb < r.Evidence.FloorDb)
                    ? "The floor lies above the reference: look whether floor and reference sweeps were exchanged."
                    : Remedy(most),
            };
        }
    }

    // The figures where most is missing.
    private static string Basis(Evidence seen, ShieldingCurve curve)
    {
        int worst = Enumerable.Range(0, curve.Readings.Length).MaxBy(f => Missing(seen, curve, f));
        ReadingEvidence at = curve.Readings[worst].Evidence;
        double rise = at.ReferenceDb - (at.FloorDb ?? double.NaN);
        return at.ReferenceInFloor && LeastRiseDb - rise >= Missing(seen, curve, worst)
            ? string.Create(CultureInfo.InvariantCulture, $"Reference less floor, where it is least: {rise:0.0} dB, against {LeastRiseDb:0} dB.")
            : string.Create(CultureInfo.InvariantCulture, $"Where most is missing: usable dynamic range {at.DynamicRange!.Value.Value:0.0} dB, against {seen.Requirement!.At(at.At)!.Value.Value:0.0} dB asked and {seen.Margin.Value:0.0} dB of margin.");
    }

    // dB of range missing for requirement plus margin, or for a reference that stands clear of the floor.
    private static double Missing(Evidence seen, ShieldingCurve curve, int f)
    {
        ReadingEvidence at = curve.Readings[f].Evidence;
        double missing = at.ReferenceInFloor ? LeastRiseDb - (at.ReferenceDb - at.FloorDb!.Value) : 0;
        // Where something transmits the range is short for that reason, and its own finding says so.
        if (!at.Ambient && at.DynamicRange is { } range && seen.Requirement?.At(at.At) is { } wanted)
        {
            missing = Math.Max(missing, wanted.Value + seen.Margin.Value - range.Value);
        }

        return missing;
    }

    private static string Remedy(double missing)
    {
        string[] ways = [.. Ways(missing)];
        return string.Create(CultureInfo.InvariantCulture, $"To gain {missing:0.0} dB: {string.Join(", or ", ways)}. Several of them together add up.");
    }

    // Bandwidth moves the floor by 10 log of its ratio, averaging power the detection limit by about 5 log of the number: past these ends neither is practical.
    private static IEnumerable<string> Ways(double missing)
    {
        double bandwidth = Math.Pow(10, missing / 10);
        yield return string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(missing):0} dB more source power");
        if (missing <= 40)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"a resolution bandwidth {(bandwidth < 10 ? Math.Round(bandwidth, 1) : Math.Ceiling(bandwidth)):0.#} times narrower");
        }

        if (missing <= 30)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(missing):0} dB less input attenuation as far as overload allows");
        }

        yield return "a preamplifier";
        if (missing <= 10)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(bandwidth * bandwidth):0} times more averaging");
        }
    }
}
