using SweepStats.Fields;

namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[field]: a steady field that is to be kept out, and a pulse.</summary>
internal static class FieldSettings
{
    private const double Least = 1e-12, Most = 1e12;
    private const string Threat = "threat_v_per_m", Tolerable = "tolerable_v_per_m", Outside = "outside";
    private const string Peak = "pulse_peak_v_per_m", Decay = "pulse_alpha_per_s", Rise = "pulse_beta_per_s";

    public static SettingsSection Section { get; } = new("field")
    {
        Object = "A steady field that the specimens are to keep out; there only where it was stated.",
        IsObjectOptional = true,
        Guide = "| `[field]` | a field in front of the specimen: `threat_v_per_m`, `tolerable_v_per_m` ([what is left of "
            + "it](pulse.md)) |",
        Heading = "## Field strengths, for the question what remains behind the curtain.\n# [field]",
        Settings =
        [
            new(Threat, """
        # threat_v_per_m = 50e3     # steady field in front of the curtain: what is left of it at most behind each
        #                           # specimen is told
        """, new PlanMember(Threat, r => r.Plan.Field?.VoltsPerMetre, PlanMember.Positive, "In front of the specimen.")),
            new(Tolerable, "# tolerable_v_per_m = 5e3   # may be left out",
                new PlanMember(Tolerable, r => r.Plan.Field?.TolerableVoltsPerMetre,
                    """ "type": ["number", "null"], "exclusiveMinimum": 0 """, "Behind it; null where not stated.")),
            Setting.Choice<OutsideBand>(
                Outside, [new("none", OutsideBand.None), new("hold", OutsideBand.Hold), new("slope", OutsideBand.Slope)],
                (plan, beyond) => plan with { Pulse = plan.Pulse with { Outside = beyond } }, """
        # outside = "none"          # what sweepstats field takes for the shielding outside the band, for a pulse: none,
        #                           # hold (the end's reading) or slope
        """),
            new(Peak, """
        # pulse_peak_v_per_m = 50e3 # a pulse of your own; the early-time pulse of IEC 61000-2-9 unless stated. All three, or none
        """),
            new(Decay, "# pulse_alpha_per_s = 4e7   # decay"), new(Rise, "# pulse_beta_per_s = 6e8    # rise"),
        ],
        Together = Read,
    };

    private static CampaignSettings Read(KeyReader keys, CampaignSettings settings)
    {
        double? threat = keys.Number(Threat, Least, Most), tolerable = keys.Number(Tolerable, Least, Most);
        DoubleExponential pulse = OwnPulse(keys) ?? settings.Plan.Pulse.Pulse;
        if (keys.Has(Tolerable) || !(keys.Has(Peak) || keys.Has(Outside)))
        {
            keys.Require(Threat);
        }

        return settings with
        {
            Plan = settings.Plan with
            {
                Field = threat is { } steady ? new FieldThreat(steady, tolerable) : null,
                Pulse = settings.Plan.Pulse with { Pulse = pulse },
            },
        };
    }

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
