using SweepStats.Statistics;

namespace SweepStats.Files.Campaigns.Settings;

/// <summary>What stands above all sections.</summary>
internal static class TopSettings
{
    private const string Ways = """ "enum": ["unknown", "power", "log", "sample", "peak", "lowest"] """;

    public static SettingsSection Section { get; } = new("")
    {
        Turn = -1,
        Guide = "| above all sections | `title`, `confidence` (0.95), `averaging` (`power`, `log`, `sample`, `peak`, `lowest`; "
            + "how the receiver averages) |",
        Heading = """
        ## Settings of this campaign. Lines that start with '##' are remarks. To use a line that starts with one '#',
        ## take that '#' away.
        ## Frequencies are in Hz, levels in dBm, ratios in dB. Whatever is left out has its default.

        """,
        Settings =
        [
            Setting.Text("title", (s, title) => s with { Title = title }, "# title = \"Curtain of the receiver cabin\"\n"),
            Setting.Of("averaging", AveragingWords.Read, (s, way) => s with { Plan = s.Plan with { Averaging = way } }, """
        ## How the receiver makes one reading of its looks: "power" (RMS detector), "log" (log or video averaging),
        ## "sample" (one look), "peak" (peak or quasi-peak detector, max hold) or "lowest" (negative peak detector, min hold).
        ## Left out: what the files say of it is taken. Where they say nothing the intervals hold for power and for log averaging;
        ## they then do not hold for "lowest", and for "peak" only where the floor readings show it.
        # averaging = "power"

        """,
                new("averaging", r => r.Plan.Averaging.ToString().ToLowerInvariant(), Ways,
                    "How the receiver averages, as campaign.toml states it."),
                new("averaging_in_use", r => r.Averaging.Averaging.ToString().ToLowerInvariant(), Ways,
                    "How the receiver is taken to average; intervals rest on it.") { IsOptional = true },
                new("averaging_source", r => r.Averaging.Source.ToString().ToLowerInvariant(),
                    """ "enum": ["unknown", "stated", "files", "recognised"] """, "Where that is known from: campaign.toml "
                        + "(stated), the words of the files, or what the floor readings show (recognised).")
                {
                    IsOptional = true,
                })
                with { Turn = 1 },
            Setting.Number("confidence", 0.5, 0.9999, (plan, level) => plan with { Confidence = new Confidence(level) },
                "## Level of all intervals.\nconfidence = 0.95",
                new PlanMember("confidence", r => r.Plan.Confidence.Level, PlanMember.Share)) with { Turn = 1 },
            Setting.Of("rehearsed", keys => keys.Truth("rehearsed"), (s, drawn) => s with { Rehearsed = drawn }, """
        ## Marks every report of sweeps that were drawn by a model; rehearse writes it.
        # rehearsed = true

        """),
        ],
    };
}
