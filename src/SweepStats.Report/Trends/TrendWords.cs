using SweepStats.Report.Answer;
using SweepStats.Report.Lots;
using SweepStats.Report.Setup;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using SweepStats.Trends;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Trends.FactorWords;
using static SweepStats.Report.Trends.SlopeWords;
using static SweepStats.Report.Trends.TrendRequirementWords;

namespace SweepStats.Report.Trends;

/// <summary>What an ordered factor does to the shielding, on console and page.</summary>
public static class TrendWords
{
    // More rows push the answer off the first screen; the page and trend.csv have all.
    private const int MostValuesShown = 8;

    /// <summary>
    /// The trend on the console: the answer, the values measured, the bands; behind it how lots compare, where there are several.
    /// </summary>
    /// <param name="result">What the analysis found; with a trend.</param>
    /// <param name="name">What to call the campaign; its title unless given.</param>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> TrendText(AnalysisResult result, string? name = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        FactorTrend trend = result.Trend ?? throw new ArgumentException("The result has no trend.", nameof(result));
        string counted = $"{Count(trend.Specimens.Length, "specimen")} at {Count(trend.Groups.Length, "value")} of "
            + $"{Factor(trend)}, {ValueRange(trend)}";
        return
        [
            $"{PlainText.Of(name ?? result.Title)}: {counted}", VerdictWords.HeadlineWithReason(result),
            .. TrendAnswer(result, trend), string.Empty, .. ValueTable(trend), string.Empty,
            .. TextTable.Of(TrendBandColumns, trend.Bands.Select(b => TrendBandRow(trend, b))), .. OneCloth(trend),
            .. result.Lots.Lots.Length < 2 ? Array.Empty<string>()
                : [string.Empty, "Lot by lot, whatever the order:", .. LotWords.LotsText(result, name).Skip(2)],
        ];
    }

    private static IEnumerable<string> ValueTable(FactorTrend trend)
    {
        IEnumerable<string> table =
            TextTable.Of(TrendValueColumns(trend), trend.Groups.Take(MostValuesShown).Select(g => TrendValueRow(trend, g)));
        int more = trend.Groups.Length - MostValuesShown;
        return more <= 0 ? table
            : table.Append($"  and {Count(more, "value")} more: trend.csv, which 'sweepstats run' writes.");
    }

    // Several lots with specimens at several values show whether those of a lot go together; one lot cannot.
    private static string[] OneCloth(FactorTrend trend) =>
        trend.Lack != TrendLack.None || trend.Specimens.Select(s => s.Name.Lot).Distinct().Count() > 1 ? []
            : [string.Empty, "All specimens are of one lot: the intervals hold if each is a specimen of its own, not one cloth "
                + "measured again."];

    internal static string TrendHeading(FactorTrend trend) => $"Trend along {Factor(trend)}";

    /// <summary>Up to where the requirement is met, how the shielding changes, and what that rests on.</summary>
    internal static IEnumerable<string> TrendAnswer(AnalysisResult result, FactorTrend trend)
    {
        if (trend.Lack != TrendLack.None)
        {
            return [TrendLacking(trend)];
        }

        IEnumerable<string> met = trend.Requirement is { } asked
            ? [.. MetAlong(trend, asked, AskedWords.WhereAsked(result)), .. TrendRests(trend, asked)]
            : [result.Plan.Requirement is null
                ? "No requirement is stated, so up to where it is met is not asked: add [requirement] to campaign.toml."
                : "The requirement asks for nothing at the frequencies that were measured."];
        return [.. met.Take(1), SlopeOf(trend, trend.Whole), .. StraightOf(trend), .. met.Skip(1), .. HiddenAlong(result, trend)];
    }

    internal static string[] TrendValueColumns(FactorTrend trend) =>
        [Factor(trend), "Specimens", "Mean",
            trend.Requirement is null ? "Requirement (none)" : "Requirement, at this value by itself"];

    internal static IReadOnlyList<string> TrendValueRow(FactorTrend trend, FactorGroup group) =>
    [
        Plain(group.Value), Plain(group.Specimens), double.IsFinite(group.MeanDb) ? Ratio(group.MeanDb) : Nothing,
        trend.Requirement is null ? Nothing : OutcomeWord(group.Outcome),
    ];

    /// <summary>What the trend rests on, for the page.</summary>
    internal static string TrendMeans(FactorTrend trend) =>
        "One specimen is one independent witness: the line is that of least squares through one value a specimen, its interval "
        + "Student's t. "
        + "What all specimens share (reference, floor, stated errors) moves all of them alike and is not in the slope; "
        + "where the level is held against the requirement it is. "
        + "The statement is of the mean of such specimens: single ones scatter about it. "
        + "\"Met up to\" tests the values in their order and stops at the first that fails the test, so it needs no "
        + "allowance for "
        + $"their number; \"not met\" allows for the number of frequencies. Nothing is said beyond {ValueRange(trend)}. "
        + "A cloth that was measured at several values is one cloth: the result is then of that cloth alone, or, where there are "
        + "several such cloths, its interval is too short. Frequency by frequency: trend.csv.";

    private static string TrendLacking(FactorTrend trend) => trend.Lack == TrendLack.Values
        ? $"A trend needs specimens at three values of {Factor(trend)}; there {(trend.Groups.Length == 1 ? "is 1" : "are 2")}: "
            + $"{string.Join(" and ", trend.Groups.Select(g => Plain(g.Value)))}. Measure at another value."
        : $"A trend needs four specimens; there are {Plain(trend.Specimens.Length)}. Measure another one, best at a value that "
            + "was measured already.";

    private static IEnumerable<string> HiddenAlong(AnalysisResult result, FactorTrend trend)
    {
        int hidden = trend.Frequencies.Count(f => f.Capped > 0);
        if (hidden > 0)
        {
            string against = trend.Requirement is { Hidden: > 0, Obstacle: not TrendObstacle.Faults }
                ? "; bounds are held against the requirement value by value" : string.Empty;
            yield return $"At {Plain(hidden)} of {Count(trend.Frequencies.Length, "frequency")} "
                + $"{BoundCauses.Of(result.Curves).What} hides some specimen: no slope there{against}.";
        }

        int bent = trend.Frequencies.Count(f => f.Line is not null && f.Basis != TrendBasis.Line);
        if (trend.Whole.IsStraight && bent > 0 && trend.Requirement is
            {
                Obstacle: not TrendObstacle.Faults
            and not TrendObstacle.LotsApart and not TrendObstacle.ReferenceOnce
            })
        {
            yield return $"At {Count(bent, "frequency")} no straight line fits; the means at each value are held against the "
                + "requirement there.";
        }
    }
}
