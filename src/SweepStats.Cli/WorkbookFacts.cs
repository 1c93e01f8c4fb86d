using System.Globalization;
using SweepStats.Files.Spreadsheets;
using SweepStats.Report;

namespace SweepStats.Cli;

/// <summary>What the first sheet of results.xlsx tells of the rest.</summary>
internal static class WorkbookFacts
{
    public static IEnumerable<WorkbookFact> Of(CampaignAnalysis analysis) =>
    [
        new("Report", analysis.Result.Title),
        new("Verdict", Wording.Headline(analysis.Result)),
        new("Level of the intervals", analysis.Result.Plan.Confidence.Level.ToString(CultureInfo.InvariantCulture)),
        new("Names of columns", "A name that ends in _db holds decibels, in _hz hertz; low and high are the ends of an interval."),
        new("Bounds", "In a column at_least_db stands what a value lies above, where no more is known than that."),
    ];
}
