using SweepStats.Doubts;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>Readings that the floor cuts off: the specimen shields at least this much.</summary>
internal sealed class Capped : ICheck
{
    /// <inheritdoc/>
    public string Code => "capped";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => Lacking.Floor(seen);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        foreach (ShieldingCurve curve in seen.Curves)
        {
            bool At(int f) => curve.Readings.Mark(f) is { State: ShieldingState.Capped, HiddenBehindPlate: false } mark
                && !mark.Doubts.HasFlag(ReadingDoubts.CoveredAtBottom) && !curve.Readings[f].Evidence.LeakageRules;
            int count = Enumerable.Range(0, curve.Readings.Length).Count(At);
            if (count == 0)
            {
                continue;
            }

            ReadingEvidence[] bounded =
                [.. Enumerable.Range(0, curve.Readings.Length).Where(At).Select(f => curve.Readings[f].Evidence)];
            bool carriers = Enumerable.Range(0, curve.Readings.Length).All(f => !At(f) || curve.Readings[f].Evidence.Ambient);
            bool enough = Reached.By(curve, Enumerable.Range(0, curve.Readings.Length).Where(At), seen);
            yield return new Finding
            {
                Code = Code,
                Severity = enough ? Severity.Note : Severity.Warning,
                Role = SweepRole.Covered,
                Specimen = curve.Name,
                Where = Stretches.Where(seen.Campaign.Grid, At),
                Message = $"At {Amount.OutOf(count, curve.Readings.Length)} the shielding is a lower bound, not a value: "
                    + $"{string.Join("; or ", Causes(bounded))}."
                    + (enough ? (seen.Rule!.GuardBand.Value > 0
                        ? " The bounds reach the requirement and its guard band all the same."
                        : " The bounds reach the requirement all the same.") : string.Empty),
                Basis = Basis(bounded),
                NextStep = enough
                    ? count == curve.Readings.Length
                        ? "Open it once and look that the level rises: with the source off it would read so too."
                        : "Nothing, unless a value is wanted instead of a bound."
                    : carriers ? "Find and switch off the transmitter (finding ambient): more range does not help there."
                    : curve.Readings.Any(r => r.State == ShieldingState.Overloaded)
                    ? "Make more range without more level, since the receiver is overloaded elsewhere: narrower resolution "
                        + "bandwidth (a tenth gives 10 dB), or more averaging."
                    : "Make more range: narrower resolution bandwidth (a tenth gives 10 dB), more source power, less input "
                        + "attenuation, a preamplifier, or more averaging."
                        + (bounded.Any(r => r.Ambient) ? " It does not help where something transmits with the source off "
                            + "(finding ambient)." : string.Empty),
            };
        }
    }

    private static IEnumerable<string> Causes(ReadingEvidence[] bounded)
    {
        if (bounded.Any(r => !r.Ambient && !r.ReferenceInFloor))
        {
            yield return "the covered level cannot be told from the floor";
        }

        if (bounded.Any(r => r.Ambient))
        {
            yield return "something transmits there with the source off";
        }

        if (bounded.Any(r => !r.Ambient && r.ReferenceInFloor))
        {
            yield return "the reference rises less than 10 dB over the floor";
        }
    }

    private static string Basis(ReadingEvidence[] capped)
    {
        double[] over = [.. capped.Where(r => !r.Ambient && !r.ReferenceInFloor).Select(r => r.CoveredDb - r.FloorDb!.Value)];
        return over.Length == 0
            ? capped.All(r => r.Ambient) ? string.Create(Amount.Print,
                $"Floor sweeps hold more than noise at all {capped.Length} (finding ambient).")
            : "There the floor holds more than noise, or the reference rises less than 10 dB over it."
            : string.Create(Amount.Print, $"Covered less floor: median {Sample.Median(over):0.0} dB, highest {over.Max():0.0} "
                + $"dB; the interval has no upper end where noise alone may make such a level.");
    }
}
