using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The receiver shows less than the step of the source.</summary>
internal sealed class SaturationStep : ICheck
{
    /// <inheritdoc/>
    public string Code => "saturation-step";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => LacksToTest(seen);

    /// <summary>Why steps of the source cannot be looked at; null where they can.</summary>
    internal static string? LacksToTest(Evidence seen) =>
        seen.Linearity is null && !seen.Campaign.SetAside.Any(s => s.Role == SweepRole.Linearity)
            ? Lacking.Sweeps(seen, SweepRole.Linearity)
            : !ReferenceSource.IsKnown(seen.Campaign, seen.SourceDbm)
            ? "nothing says at which source level the reference was taken (source_dbm)"
            : seen.Linearity is not null ? null
            : "the linearity sweeps do not allow it (another source level than the reference's, the frequencies of the other "
                + "sweeps, 20 dB over the floor)";

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        // A reference below that of less power is no overload (finding wrong-kind).
        if (seen.Linearity is not { } curve || MistakenReference.Step(seen) is not null
            || curve.All.Where(s => s.IsShort).MinBy(s => s.HighDbm) is not { } first)
        {
            yield break;
        }

        LinearityStep worst = curve.All.Where(s => s.IsShort).MaxBy(s => s.ShortfallDb)!;
        yield return new Finding
        {
            Code = Code,
            Severity = Unused(curve) ? Severity.Note : worst.ShortfallDb >= LinearityCurve.CompressionDb ? Severity.Fault
                : Severity.Warning,
            Role = SweepRole.Linearity,
            Size = new Decibels(worst.ShortfallDb),
            Bias = Unused(curve) ? null : Checks.Bias.TooSmall,
            Where = curve.OverloadedFromDb is { } from && !seen.Curves.IsEmpty
                ? Stretches.Where(seen.Campaign.Grid, f => seen.Curves[0].Readings[f].Evidence.ReferenceDb >= from) : [],
            Message = $"From {Amount.Dbm(worst.LowDbm)} to {Amount.Dbm(worst.HighDbm)} of the source the receiver shows "
                + $"{Amount.Db(worst.ShortfallDb)} too little{Limits(worst)}: it is overloaded, or the source does not step as "
                + $"stated. {Consequence(seen, curve)}{Compression(curve)}",
            Basis = string.Create(Amount.Print, $"{Method(worst)} at "
                + $"{Amount.Count(worst.PointCount, "frequency", "frequencies")}, {worst.LowSweeps} + {worst.HighSweeps} "
                + $"sweeps{Against(curve, worst)}; told from {LinearityStep.WorthTellingDb} dB on, a fault from "
                + $"{LinearityCurve.CompressionDb} dB on."),
            NextStep = ExchangedPlate.IsLikely(seen) ? ExchangedPlate.NextStep
                : Unused(curve) ? $"Stay at {Amount.Dbm(curve.ReferenceDbm!.Value)} of the source or below."
                : $"{Lower(curve, Followed(curve, first))}, and take reference and covered again. Measure the level of the "
                    + "source if the receiver is known to follow.",
        };
    }

    // Only levels above that of the reference fall short, and up to the reference's nothing was missing: no claim rests on them.
    private static bool Unused(LinearityCurve curve) =>
        curve is { OverloadedFromDb: null, ReferenceDbm: { } used, Reference: { IsShort: false, Interval: not null } }
            && curve.All.Where(s => s.IsShort).All(s => s.HighDbm > used);

    // The highest source level at which nothing is missing.
    private static double Followed(LinearityCurve curve, LinearityStep first) =>
        curve.All.Where(s => !s.IsShort && s.HighDbm < first.HighDbm).Select(s => s.HighDbm).Append(curve.LowestDbm).Max();

    // Who is there already cannot go down to it.
    private static string Lower(LinearityCurve curve, double followed) =>
        curve.ReferenceDbm <= followed ? "Put attenuation before the receiver"
        : $"Go down to {Amount.Dbm(followed)} of the source or less, or put attenuation before the receiver";

    private static string Consequence(Evidence seen, LinearityCurve curve) => curve switch
    {
        { OverloadedFromDb: double.NegativeInfinity } =>
            "The reference reads too low, and the shielding is at least what is shown.",
        { OverloadedFromDb: { } from } => string.Create(Amount.Print,
            $"A reference from {from:0.0} {seen.Campaign.Scale.Symbol()} on reads too low, and the shielding there is at least "
                + $"what is shown."),
        { ReferenceDbm: { } source } => $"The reference, taken at {Amount.Dbm(source)}, is not shown to read too low.",
        _ => "A reference taken there reads too low, and the shielding comes out too small by as much.",
    };

    private static string Against(LinearityCurve curve, LinearityStep step) =>
        ReferenceEquals(step, curve.Reference) ? ", the higher ones those of the reference" : string.Empty;

    private static string Method(LinearityStep step) => step.Interval is { } limits
        ? string.Create(Amount.Print, $"Welch interval of the shortfall {limits.Low:0.00} to {limits.High:0.00} dB, 95 %,")
        : string.Create(Amount.Print, $"Shortfall {step.ShortfallDb:0.00} dB, without a test,");

    private static string Limits(LinearityStep step) => step.Interval is { } limits
        ? string.Create(Amount.Print, $" (95 % limits {limits.Low:0.00} to {limits.High:0.00} dB)")
        : " (from single sweeps, so without limits)";

    private static string Compression(LinearityCurve curve) =>
        curve.CompressionDbm is { } source ? " By a straight line between the levels taken it falls 1 dB short at about "
            + $"{Amount.Dbm(Math.Round(source, 1))} of the source." : string.Empty;
}
