using SweepStats.Fields;

namespace SweepStats.Files.Campaigns;

/// <summary>The section [field] of campaign.toml: a steady field that is to be kept out, and a pulse.</summary>
internal sealed class FieldSection
{
    private const double Least = 1e-12, Most = 1e12;
    private const string Peak = "pulse_peak_v_per_m", Decay = "pulse_alpha_per_s", Rise = "pulse_beta_per_s";

    public FieldSection(KeyReader keys)
    {
        double? threat = keys.Number("threat_v_per_m", Least, Most), tolerable = keys.Number("tolerable_v_per_m", Least, Most);
        OutsideBand outside = keys.Choice<OutsideBand>(
            "outside", new("none", OutsideBand.None), new("hold", OutsideBand.Hold), new("slope", OutsideBand.Slope))
            ?? OutsideBand.None;
        Pulse = new PulseQuestion { Pulse = OwnPulse(keys) ?? DoubleExponential.EarlyTime, Outside = outside };
        if (keys.Has("tolerable_v_per_m") || !(keys.Has(Peak) || keys.Has("outside")))
        {
            keys.Require("threat_v_per_m");
        }

        Threat = threat is { } steady ? new FieldThreat(steady, tolerable) : null;
    }

    /// <summary>The steady field; null where none is stated.</summary>
    public FieldThreat? Threat { get; }

    /// <summary>The pulse, and what is taken outside the band.</summary>
    public PulseQuestion Pulse { get; }

    // Three constants make a pulse; two make none.
    private static DoubleExponential? OwnPulse(KeyReader keys)
    {
        double? peak = keys.Number(Peak, Least, Most), decay = keys.Number(Decay, 1, 1e12), rise = keys.Number(Rise, 1, 1e15);
        if (new[] { Peak, Decay, Rise }.Any(keys.Has))
        {
            keys.Require(Peak, Decay, Rise);
        }

        if (peak is not { } height || decay is not { } alpha || rise is not { } beta)
        {
            return null;
        }

        if (beta >= DoubleExponential.LeastRatio * alpha && beta <= DoubleExponential.MostRatio * alpha)
        {
            return DoubleExponential.OfPeak(height, alpha, beta);
        }

        keys.Refuse(Rise, FormattableString.Invariant($"field.{Rise} is {beta / alpha:G4} times {Decay}"),
            FormattableString.Invariant($"choose a rise (beta) that is {DoubleExponential.LeastRatio} to ")
                + FormattableString.Invariant($"{DoubleExponential.MostRatio} times as fast as the decay (alpha)"));
        return null;
    }
}
