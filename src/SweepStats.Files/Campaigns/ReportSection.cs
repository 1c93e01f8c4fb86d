using SweepStats.Sweeps;

namespace SweepStats.Files.Campaigns;

/// <summary>The section [report] of campaign.toml: what identifies the test on the first page of its report.</summary>
internal static class ReportSection
{
    public static TestIdentity Read(KeyReader keys) => new()
    {
        Laboratory = keys.Text("laboratory"),
        Customer = keys.Text("customer"),
        Operator = keys.Text("operator"),
        Instrument = keys.Text("instrument"),
        Calibration = keys.Text("calibration"),
        Date = keys.Day("date"),
    };
}
