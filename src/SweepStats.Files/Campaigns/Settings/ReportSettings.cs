using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns.Settings;

/// <summary>[report]: what identifies the test on the first page of its report.</summary>
internal static class ReportSettings
{
    public static SettingsSection Section { get; } = new("report")
    {
        Turn = -1,
        Guide = "| `[report]` | the head of the report: `laboratory`, `customer`, `operator`, `instrument`, `calibration`, "
            + "`date` (such as `\"2026-10-05\"`); of at most 200 characters; what is left out has a line to fill in by hand, "
            + "and the date is that of the sweeps where these state theirs |",
        Heading = """
        ## What stands at the head of the report. Whatever is left out has a line there to fill in by hand.
        # [report]
        """,
        Settings =
        [
            Text("laboratory", (i, text) => i with { Laboratory = text }, "\"Receiver laboratory, north hut\""),
            Text("customer", (i, text) => i with { Customer = text }, "\"Telescope operations\""),
            Text("operator", (i, text) => i with { Operator = text }, "\"who took the sweeps\""),
            Text("instrument", (i, text) => i with { Instrument = text },
                "\"receiver, source and antennas, with their numbers\""),
            Text("calibration", (i, text) => i with { Calibration = text }, "\"certificate, and until when it holds\""),
            new("date", """
        # date = "2026-10-05"       # left out: the days on which the sweeps were taken, where these say it
        """) { Take = (keys, s) => s with { Identity = s.Identity with { Date = keys.Day("date") } } },
        ],
    };

    private static Setting Text(string key, Func<TestIdentity, string, TestIdentity> put, string example) =>
        Setting.Text(key, (s, text) => s with { Identity = put(s.Identity, text) }, $"# {key} = {example}");
}
