using SweepStats.Quantities;

namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[band] and [[named_band]]: the part to analyse, and parts of it that matter by themselves.</summary>
internal static class BandSettings
{
    public static SettingsSection Section { get; } = new("band")
    {
        Guide = "| `[band]` | the part to analyse: `start_hz`, `stop_hz`; `interpolate = true` where floor or reference have "
            + "other frequencies |",
        Heading = "## Only where not all frequencies count:\n# [band]",
        Settings =
        [
            new("start_hz", "# start_hz = 30e6",
                new PlanMember("start_hz", r => r.Plan.Band?.Start.Value, PlanMember.Frequency)),
            new("stop_hz", "# stop_hz = 1e9", new PlanMember("stop_hz", r => r.Plan.Band?.Stop.Value, PlanMember.Frequency)),
            Setting.Truth("interpolate", (plan, on) => plan with { Interpolate = on }, """
        # interpolate = true           # sweeps on other frequencies are brought onto those of the covered sweeps
        """, PlanMember.Stated("interpolate", r => r.Plan.Interpolate ? true : null, """ "const": true """,
                    "Whether sweeps on other frequencies are brought onto those of the covered sweeps")),
        ],
        Together = Ends,
    };

    public static SettingsSection Named { get; } = new("named_band")
    {
        IsRepeated = true,
        Guide = "| `[[named_band]]` | parts that matter by themselves: `name`, `start_hz`, `stop_hz`; up to 12 |",
        Heading = "## Parts of the band that matter by themselves; one block each, up to 12.\n# [[named_band]]",
        Settings =
        [
            new("name", "# name = \"communications\""),
            new("start_hz", "# start_hz = 225e6"), new("stop_hz", "# stop_hz = 400e6"),
        ],
        Together = NamedBandSection.Read,
    };

    private static CampaignSettings Ends(KeyReader keys, CampaignSettings settings)
    {
        double? start = keys.Number("start_hz", 0, SettingsReader.HighestHertz);
        double? stop = keys.Number("stop_hz", 0, SettingsReader.HighestHertz);
        if (SharedBand.IsReversed(keys, start, stop) || (start ?? stop) is null)
        {
            return settings;
        }

        var band = new FrequencyBand(new Hertz(start ?? 0), new Hertz(stop ?? SettingsReader.HighestHertz));
        return settings with { Plan = settings.Plan with { Band = band } };
    }
}
