using System.Globalization;
using SweepStats.Linearity;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The receiver shows less than the step of the source.</summary>
internal sealed class SaturationStep : ICheck
{
    // Steps of sources are good to one or two tenths of a dB; less than a quarter is no sign of overload.
    private const double WorthTellingDb = 0.25;

    public string Code => "saturation-step";

    public string? UntestedBecause(Evidence seen) => seen.Linearity is not null ? null
        : seen.Campaign.SetAside.Any(s => s.Role == SweepRole.Linearity)
            ? "the linearity sweeps do not allow it (two source levels, the frequencies of the other sweeps, 20 dB over the floor)"
            : "there are no linearity sweeps";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        if (seen.Linearity is not { } curve || curve.Steps.FirstOrDefault(s => s.ShortfallDb >= WorthTellingDb && s.Interval is not { Low: <= 0 }) is not { } first)
        {
            yield break;
        }

        LinearityStep worst = curve.Steps.MaxBy(s => s.ShortfallDb)!;
        yield return new Finding
        {
            Code = Code,
            Severity = worst.ShortfallDb >= LinearityCurve.CompressionDb ? Severity.Fault : Severity.Warning,
            Role = SweepRole.Linearity,
            Size = new Decibels(worst.ShortfallDb),
            Message = $"From {Dbm(worst.LowDbm)} to {Dbm(worst.HighDbm)} of the source the receiver shows {Amount.Db(worst.ShortfallDb)} too little{Limits(worst)}: it is overloaded, and where it is the shielding comes out too small by as much.{Compression(curve)}",
            Basis = string.Create(CultureInfo.InvariantCulture, $"{Method(worst)} at {worst.PointCount} frequencies, {worst.LowSweeps} + {worst.HighSweeps} sweeps; told from {WorthTellingDb} dB on, a fault from {LinearityCurve.CompressionDb} dB on."),
            NextStep = $"Stay below {Dbm(first.HighDbm)} of the source, or put attenuation before the receiver, and take reference and covered again.",
        };
    }

    private static string Method(LinearityStep step) => step.Interval is { } limits
        ? string.Create(CultureInfo.InvariantCulture, $"Welch interval of the shortfall {limits.Low:0.00} to {limits.High:0.00} dB, 95 %,")
        : string.Create(CultureInfo.InvariantCulture, $"Shortfall {step.ShortfallDb:0.00} dB, without a test,");

    private static string Limits(LinearityStep step) => step.Interval is { } limits
        ? string.Create(CultureInfo.InvariantCulture, $" (95 % limits {limits.Low:0.00} to {limits.High:0.00} dB)")
        : " (from single sweeps, so without limits)";

    private static string Compression(LinearityCurve curve) => curve.CompressionDbm is { } source ? $" It falls 1 dB short at about {Dbm(source)} of the source." : string.Empty;

    private static string Dbm(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.#} dBm");
}
