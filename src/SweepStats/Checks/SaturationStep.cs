using System.Collections.Immutable;
using System.Globalization;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>The receiver shows less than the step of the source.</summary>
internal sealed class SaturationStep : ICheck
{
    // Steps of sources are good to one or two tenths of a dB; less than a quarter is no sign of overload.
    private const double WorthTellingDb = 0.25;
    private const double CompressionDb = 1;

    public string Code => "saturation-step";

    public string? UntestedBecause(Evidence seen) => !LinearitySteps.Of(seen).IsEmpty ? null
        : seen.Campaign.SetAside.Any(s => s.Role == SweepRole.Linearity)
            ? "the linearity sweeps do not allow it (two source levels, the frequencies of the other sweeps, 20 dB over the floor)"
            : "there are no linearity sweeps";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        ImmutableArray<LinearityStep> steps = LinearitySteps.Of(seen);
        if (steps.FirstOrDefault(s => s.ShortfallDb >= WorthTellingDb && s.Interval is not { Low: <= 0 }) is not { } first)
        {
            yield break;
        }

        LinearityStep worst = steps.MaxBy(s => s.ShortfallDb)!;
        yield return new Finding
        {
            Code = Code,
            Severity = worst.ShortfallDb >= CompressionDb ? Severity.Fault : Severity.Warning,
            Role = SweepRole.Linearity,
            Size = new Decibels(worst.ShortfallDb),
            Message = $"From {Dbm(worst.LowDbm)} to {Dbm(worst.HighDbm)} of the source the receiver shows {Amount.Db(worst.ShortfallDb)} too little{Limits(worst)}: it is overloaded, and where it is the shielding comes out too small by as much.{Compression(steps)}",
            Basis = string.Create(CultureInfo.InvariantCulture, $"{Method(worst)} at {worst.PointCount} frequencies, {worst.LowSweeps} + {worst.HighSweeps} sweeps; told from {WorthTellingDb} dB on, a fault from {CompressionDb} dB on."),
            NextStep = $"Stay below {Dbm(first.HighDbm)} of the source, or put attenuation before the receiver, and take reference and covered again.",
        };
    }

    private static string Method(LinearityStep step) => step.Interval is { } limits
        ? string.Create(CultureInfo.InvariantCulture, $"Welch interval of the shortfall {limits.Low:0.00} to {limits.High:0.00} dB, 95 %,")
        : string.Create(CultureInfo.InvariantCulture, $"Shortfall {step.ShortfallDb:0.00} dB, without a test,");

    private static string Limits(LinearityStep step) => step.Interval is { } limits
        ? string.Create(CultureInfo.InvariantCulture, $" (95 % limits {limits.Low:0.00} to {limits.High:0.00} dB)")
        : " (from single sweeps, so without limits)";

    // Where the shortfall passes 1 dB, by a straight line between the levels that were taken.
    private static string Compression(ImmutableArray<LinearityStep> steps)
    {
        (double Source, double Shortfall) before = (steps[0].LowDbm, 0);
        foreach (LinearityStep step in steps)
        {
            if (step.ShortfallDb >= CompressionDb)
            {
                double share = (CompressionDb - before.Shortfall) / (step.ShortfallDb - before.Shortfall);
                return $" It falls 1 dB short at about {Dbm(before.Source + (share * (step.HighDbm - before.Source)))} of the source.";
            }

            before = (step.HighDbm, step.ShortfallDb);
        }

        return string.Empty;
    }

    private static string Dbm(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.#} dBm");
}
