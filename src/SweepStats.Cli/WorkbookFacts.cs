using System.Globalization;
using SweepStats.Files.Results;
using SweepStats.Files.Spreadsheets;
using SweepStats.Report.Answer;
using SweepStats.Sweeps;

namespace SweepStats.Cli;

/// <summary>What the first sheet of results.xlsx tells of the rest.</summary>
internal static class WorkbookFacts
{
    /// <summary>Title, what is stated of the test, verdict, level, how to read columns, version, digest of the files.</summary>
    public static IEnumerable<WorkbookFact> Of(CampaignAnalysis analysis) =>
    [
        new("Report", analysis.Result.Title),
        .. Stated(analysis.Result.Identity),
        new("Verdict", VerdictWords.Headline(analysis.Result)),
        new("Level of the intervals", analysis.Result.Plan.Confidence.Level.ToString(CultureInfo.InvariantCulture)),
        new("Names of columns",
            "A name that ends in _db holds decibels, in _hz hertz; low and high are the ends of an interval."),
        new("Bounds", "In a column at_least_db stands what a value lies above, where no more is known than that."),
        new("Program", $"sweepstats {SummaryText.Version}"),
        new("Input files, SHA-256", InputDigest.Of(analysis.Reading.Inputs)),
    ];

    private static IEnumerable<WorkbookFact> Stated(TestIdentity identity)
    {
        (string Name, string? Text)[] all =
        [
            ("Laboratory", identity.Laboratory), ("Customer", identity.Customer), ("Operator", identity.Operator),
            ("Instrument", identity.Instrument), ("Calibration", identity.Calibration), ("Measured on", identity.Date),
        ];
        return all.Where(line => line.Text is not null).Select(line => new WorkbookFact(line.Name, line.Text!));
    }
}
