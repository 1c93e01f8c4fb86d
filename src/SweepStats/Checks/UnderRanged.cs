using SweepStats.Quantities;
using SweepStats.Shielding;

namespace SweepStats.Checks;

/// <summary>The set-up cannot show what is asked of it.</summary>
internal sealed class UnderRanged : ICheck
{
    private const double LeastRiseDb = 10;

    private const string AskedFirst = "Look first whether the source was off for the floor and on for the reference, since both "
        + "read alike: if not, take them again. ";

    /// <inheritdoc/>
    public string Code => "under-ranged";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen);

    /// <inheritdoc/>
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
                    : seen.Rule is null
                    ? $"At {Amount.OutOf(count, curve.Readings.Length)} the reference rises less than {LeastRiseDb:0} dB over "
                        + $"the floor, by up to {Amount.Db(most)} too little."
                    : $"At {Amount.OutOf(count, curve.Readings.Length)} the usable dynamic range falls short, by up to "
                        + $"{Amount.Db(most)}, of what is asked: the requirement{Guard(seen)} with a margin of "
                        + $"{Amount.Db(seen.Margin.Value)}, or a reference {LeastRiseDb:0} dB over the floor.",
                Basis = Basis(seen, curve),
                NextStep = (dead && MistakenFloor.IsReference(seen) ? AskedFirst : string.Empty)
                    + (ExchangedPlate.IsLikely(seen) ? ExchangedPlate.NextStep
                    : dead && curve.Readings.All(r => r.Evidence.ReferenceDb < r.Evidence.FloorDb)
                    ? "Look whether floor and reference sweeps were exchanged: the floor lies above the reference. "
                        + "Give each its own role."
                    : AtMost(seen, curve).LeakageRules ? string.Create(Amount.Print,
                        $"To gain {most:0.0} dB, isolate by as much more: leakage, and not noise, ends the range. A narrower "
                            + $"bandwidth does not help.")
                    : RangeRemedy.For(most, curve.Readings.Any(r => r.State == ShieldingState.Overloaded), Attenuation(seen))),
            };
        }
    }

    // The figures where most is missing.
    private static string Basis(Evidence seen, ShieldingCurve curve)
    {
        int worst = Worst(seen, curve);
        ReadingEvidence at = AtMost(seen, curve);
        double rise = at.ReferenceDb - (at.FloorDb ?? double.NaN);
        return at.ReferenceInFloor && LeastRiseDb - rise >= Missing(seen, curve, worst)
            ? string.Create(Amount.Print, $"Reference less floor, where it is least: {rise:0.0} dB, against {LeastRiseDb:0} dB.")
            : string.Create(Amount.Print, $"Where most is missing: usable dynamic range {at.DynamicRange!.Value.Value:0.0} dB, "
                + $"against {seen.Rule!.Requirement.At(at.At)!.Value.Value:0.0} dB asked{Guard(seen)} and "
                + $"{seen.Margin.Value:0.0} dB of margin.");
    }

    private static int Worst(Evidence seen, ShieldingCurve curve) =>
        Enumerable.Range(0, curve.Readings.Length).MaxBy(f => Missing(seen, curve, f));

    private static ReadingEvidence AtMost(Evidence seen, ShieldingCurve curve) => curve.Readings[Worst(seen, curve)].Evidence;

    private static string Guard(Evidence seen) =>
        seen.Rule is { GuardBand.Value: > 0 and var guard } ? $", a guard band of {Amount.Db(guard)}" : string.Empty;

    // dB of range missing for requirement, guard band plus margin, or for a reference that stands clear of the floor.
    private static double Missing(Evidence seen, ShieldingCurve curve, int f)
    {
        ReadingMark mark = curve.Readings.Mark(f);
        if (mark.State == ShieldingState.Overloaded)
        {
            // More source power is the last thing that an overloaded receiver wants.
            return 0;
        }

        if (!mark.ReferenceInFloor && seen.Rule?.Requirement.At(curve.Readings.At(f)) is null)
        {
            return 0;
        }

        // What fails in full sight needs no more range.
        ReadingEvidence at = curve.Readings[f].Evidence;
        if (curve.Readings[f] is ShieldingReading.Measured { Shielding.High: var high }
            && seen.Rule?.Requirement.At(at.At) is { } asked && high < asked)
        {
            return 0;
        }

        double missing = at.ReferenceInFloor ? LeastRiseDb - (at.ReferenceDb - at.FloorDb!.Value) : 0;
        // Where something transmits the range is short for that reason, and its own finding says so.
        if (!at.Ambient && at.DynamicRange is { } range && seen.Rule?.AcceptanceLimit(at.At) is { } wanted)
        {
            missing = Math.Max(missing, wanted.Value + seen.Margin.Value - range.Value);
        }

        return missing;
    }

    // As files state it, each for itself; else as the campaign does.
    private static double? Attenuation(Evidence seen) =>
        seen.Campaign.Used().Min(s => s.Settings.AttenuationDb) ?? seen.Setup.AttenuationDb;
}
