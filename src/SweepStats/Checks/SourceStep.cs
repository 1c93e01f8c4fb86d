using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// The receiver shows more than the step of the source: no receiver does that, so a level or a setting is not as stated.
/// </summary>
internal sealed class SourceStep : ICheck
{
    /// <inheritdoc/>
    public string Code => "source-step";

    /// <inheritdoc/>
    public string? UntestedBecause(Evidence seen) => SaturationStep.LacksToTest(seen);

    /// <inheritdoc/>
    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Linearity is not { } curve || curve.All.Where(s => s.IsExcess).MinBy(s => s.ShortfallDb) is not { } worst)
        {
            yield break;
        }

        double excess = -worst.ShortfallDb;
        bool large = excess >= LinearityCurve.CompressionDb;
        yield return new Finding
        {
            Code = Code,
            Severity = large ? Severity.Fault : Severity.Warning,
            Role = SweepRole.Linearity,
            Size = new Decibels(excess),
            // Nobody knows which of the levels is the wrong one: that of the reference makes the shielding too large by as much.
            Bias = large ? Checks.Bias.Unknown : new Bias(excess, 0),
            Message = $"From {Amount.Dbm(worst.LowDbm)} to {Amount.Dbm(worst.HighDbm)} of the source the level rose by "
                + $"{Amount.Db(excess)} more than the source: a level of the source, an attenuator or a setting was not as "
                + "stated. The shielding may be shown too large by as much.",
            Basis = string.Create(Amount.Print, $"Rise at {Amount.Count(worst.PointCount, "frequency", "frequencies")}, "
                + $"{worst.LowSweeps} + {worst.HighSweeps} sweeps{Limits(worst)}; told from {LinearityStep.WorthTellingDb} dB "
                + $"on, a fault from {LinearityCurve.CompressionDb} dB on."),
            NextStep = "Measure the levels of the source and state them (source_dbm), or look which sweeps had other settings. "
                + "Take reference and linearity sweeps again with nothing else changed.",
        };
    }

    private static string Limits(LinearityStep step) => step.Interval is { } limits
        ? string.Create(Amount.Print, $", 95 % limits {-limits.High:0.00} to {-limits.Low:0.00} dB") : ", without limits";
}
