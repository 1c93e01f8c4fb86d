using SweepStats.Report.Answer;
using SweepStats.Report.Findings;
using SweepStats.Report.Lots;
using SweepStats.Report.Setup;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using SweepStats.Statistics;
using SweepStats.Trends;
using SweepStats.Verdicts;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Trends;

/// <summary>What an ordered factor does to the shielding, on console and page.</summary>
public static class TrendWords
{
    // More rows push the answer off the first screen; the page and trend.csv have all.
    private const int MostValuesShown = 8;

    private static readonly string[] HissingEnds = ["shes", "ches", "xes", "sses"];

    internal static readonly string[] TrendBandColumns = ["Band", "Clear part", "dB for each unit", "Interval", "Straight line"];

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
            ? [.. MetAlong(trend, asked, AskedWords.WhereAsked(result)), .. TrendRests(result, trend, asked)]
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

    internal static IReadOnlyList<string> TrendBandRow(FactorTrend trend, TrendBand band)
    {
        string name = band.Name is { } own ? $"{PlainText.Short(own, LongestSpecimen)}, {Band(band.Band)}"
            : $"whole, {Band(band.Band)}";
        if (band.Line is not { } line)
        {
            return [name, Percent(band.ClearShare), Nothing, Nothing, Nothing];
        }

        (double slope, Interval interval) = Slope(band, line);
        int digits = SlopeDigits(interval);
        string straight = line.StraightProbability is not { } p ? "cannot be told"
            : $"{(band.IsStraight ? "fits" : "does not fit")} ({LotAnswerWords.Chance(p)})";
        return
        [
            name, Percent(band.ClearShare), band.IsStraight ? Fixed(slope, digits) : Nothing,
            band.IsStraight ? $"{Low(interval.Low, digits)} to {High(interval.High, digits)} ({Level(trend.Confidence)})"
                : Nothing, straight,
        ];
    }

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

    internal static string ScopeOf(TrendRequirement asked) =>
        asked.Frequencies == 1 ? "at the one frequency it asks about" : $"at all {Count(asked.Frequencies, "frequency")}";

    internal static IEnumerable<string> MetAlong(FactorTrend trend, TrendRequirement asked, string scope)
    {
        string level = asked.Rule.IsSimpleAcceptance ? string.Empty : $" ({Level(asked.Rule.Level)}, one-sided)";
        string? hindered = asked.Obstacle switch
        {
            TrendObstacle.Faults => "Mend the faults first: up to where the requirement is met cannot be told.",
            TrendObstacle.LotsApart =>
                "Up to where the requirement is met cannot be told: specimens of a lot go together, lots lie apart "
                + $"about the line ({LotAnswerWords.Chance(trend.Whole.LotsApartProbability ?? 0)}). Analyse each lot as a "
                + "campaign of its own, or take several lots at each value.",
            TrendObstacle.ReferenceOnce =>
                "Up to where the requirement is met cannot be told: the reference was swept once, so how "
                + "far the level is off is not known. Sweep it three times or more.",
            _ => null,
        };
        yield return hindered ?? MetUpTo(trend, asked, scope, level).TrimEnd();
    }

    private static string MetUpTo(FactorTrend trend, TrendRequirement asked, string scope, string level)
    {
        const string Shown = "The mean of such specimens is shown";
        double first = trend.Groups[0].Value, last = trend.Groups[^1].Value;
        return asked.MetUpTo == last
                ? $"{Shown} to meet the requirement up to the {Along(trend, last)} measured, {scope}{level}."
            : asked.NotMetFrom == first
                ? $"{Shown} not to meet the requirement at any value measured, {ValueRange(trend)} {Factor(trend)}{level}."
            : asked.MetUpTo is { } upTo
                ? $"{Shown} to meet the requirement up to {Along(trend, Down(trend, upTo))}, {scope}{level}. "
                    + $"{Beyond(trend, asked)}"
            : $"The mean of such specimens is not shown to meet the requirement even at {Along(trend, first)}, the lowest "
                + $"value{level}: {OutcomeWord(trend.Groups[0].Outcome)}. {Beyond(trend, asked)}";
    }

    private static string Beyond(FactorTrend trend, TrendRequirement asked)
    {
        double from = asked.MetUpTo ?? trend.Groups[0].Value, last = trend.Groups[^1].Value;
        bool untold = trend.Groups.Any(g =>
            g.Value >= from && (asked.NotMetFrom is not { } ends || g.Value < ends)
                && g.Outcome == RequirementOutcome.CannotTell);
        string open = untold ? "cannot be told" : "is undecided";
        return asked.NotMetFrom is { } notMet ? Unmet(trend, asked, Up(trend, notMet)) + $" Between, it {open}."
            : asked.MetUpTo is null ? $"Nowhere up to {Along(trend, last)} is it shown not to be met."
            : $"From there to the {Along(trend, last)} measured it {open}.";
    }

    private static string Unmet(FactorTrend trend, TrendRequirement asked, double notMet)
    {
        double last = trend.Groups[^1].Value;
        string where = asked.Frequencies > 1 ? ", at one frequency or more" : string.Empty;
        return notMet == last ? $"At the {Along(trend, last)} measured it is shown not to be met{where}."
            : $"From {Plain(notMet)} to the {Along(trend, last)} measured it is shown not to be met{where}.";
    }

    internal static string SlopeOf(FactorTrend trend, TrendBand band)
    {
        if (band.Line is not { } line)
        {
            return "No mean over the band can be followed: at every frequency some specimen is known from below only.";
        }

        if (!band.IsStraight)
        {
            return "The mean shielding does not follow a straight line "
                + $"({LotAnswerWords.Chance(line.StraightProbability ?? 0)}): "
                + "no slope is stated, and only measured values are named.";
        }

        return Slope(band, line).Interval.Contains(0) ? NoSlope(trend, band, line) : SlopeTold(trend, band, line);
    }

    private static string Where(TrendBand band) =>
        (band.WithinLots is null ? string.Empty : "within lots, ") + (band.ClearShare >= 1 - 1e-9 ? "over the band"
            : $"over the {Percent(band.ClearShare)} of the band where every specimen is bounded from both sides");

    private static string NoSlope(FactorTrend trend, TrendBand band, TrendLine line)
    {
        (double slope, Interval interval) = Slope(band, line);
        int digits = SlopeDigits(interval);
        return $"No change of the mean shielding with {Factor(trend)} shows {Where(band)}: {Fixed(slope, digits)} dB "
            + $"{Each(trend)} ({Level(trend.Confidence)}: {Low(interval.Low, digits)} to {High(interval.High, digits)} dB).";
    }

    private static string SlopeTold(FactorTrend trend, TrendBand band, TrendLine line)
    {
        (double slope, Interval interval) = Slope(band, line);
        int digits = SlopeDigits(interval);
        bool falls = slope < 0;
        string limits = falls ? $"{Low(-interval.High, digits)} to {High(-interval.Low, digits)}"
            : $"{Low(interval.Low, digits)} to {High(interval.High, digits)}";
        return $"The mean shielding {(falls ? "falls" : "rises")} by {Fixed(Math.Abs(slope), digits)} dB {Each(trend)} "
            + $"({Level(trend.Confidence)}: {limits} dB), {Where(band)}.";
    }

    private static string[] StraightOf(FactorTrend trend) => trend.Whole is not { IsStraight: true, Line: { } line } ? []
        :
        [
            (line.StraightProbability is { } p ? $"A straight line fits ({LotAnswerWords.Chance(p)}). "
                : "Whether a straight line fits cannot be told: it takes specimens at the same value, or at four values. ")
                + $"Single specimens scatter about it by {FindingChartWords.Hundredths(line.ResidualDb)} (one standard "
                + "deviation).",
        ];

    private static IEnumerable<string> TrendRests(AnalysisResult result, FactorTrend trend, TrendRequirement asked)
    {
        if (asked.Obstacle is TrendObstacle.Faults or TrendObstacle.LotsApart or TrendObstacle.ReferenceOnce)
        {
            yield break;
        }

        if (asked is { DecidedAt: { } at, Frequencies: > 1 }
            && (asked.MetUpTo == trend.Groups[^1].Value || asked.NotMetFrom > trend.Groups[0].Value))
        {
            yield return asked.NotMetFrom is null ? $"{Frequency(at)} has the least to spare."
                : $"It stops being shown first at {Frequency(at)}.";
        }

        string guard = asked.Rule.GuardBand.Value > 0 ? $", with the guard band of {Exact(asked.Rule.GuardBand.Value, "dB")}"
            : string.Empty;
        yield return asked.Rule.IsSimpleAcceptance ? $"By the estimate alone{guard}."
            : $"The errors of reference, floor and what is stated are allowed for{guard}.";
        if (asked.Obstacle == TrendObstacle.NoRepeats)
        {
            yield return "Without a straight line, specimens at the same value have to show the scatter: measure two or more at "
                + "each value.";
        }

        if (!asked.OverturnedBy.IsEmpty)
        {
            yield return "What the figures say could be overturned by a finding: "
                + $"{string.Join("; ", asked.OverturnedBy.Select(CheckWords.InPassing))}.";
        }

        if (asked.Obstacle == TrendObstacle.FrequenciesLeftOut)
        {
            yield return "Frequencies that not all sweeps have were left out, so nothing is known about the requirement there.";
        }
    }

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

    private static string OutcomeWord(RequirementOutcome? outcome) => outcome switch
    {
        RequirementOutcome.Meets => "meets",
        RequirementOutcome.Fails => "fails",
        RequirementOutcome.Undecided => "undecided",
        _ => "cannot be told",
    };

    internal static string Factor(FactorTrend trend) => PlainText.Short(trend.Factor.Replace('_', ' '), LongestSpecimen);

    /// <summary>The unit of a slope: a column of counts is named in the plural, and a single letter is no word.</summary>
    internal static string Each(FactorTrend trend) =>
        Factor(trend) is { Length: > 3 } name && trend.IsCount && IsPlural(name) ? $"for each {Singular(name)}"
            : $"for each unit of {Factor(trend)}";

    private static bool IsPlural(string name) => name.EndsWith('s') && !name.EndsWith("ss", StringComparison.Ordinal);

    // "washes" and "boxes", beside "cycles" and "creases".
    private static string Singular(string name) =>
        Array.Exists(HissingEnds, end => name.EndsWith(end, StringComparison.Ordinal)) ? name[..^2] : name[..^1];

    internal static string Along(FactorTrend trend, double value) => $"{Plain(value)} {Factor(trend)}";

    internal static string ValueRange(FactorTrend trend) =>
        trend.Groups.Length == 1 ? Plain(trend.Groups[0].Value)
            : $"{Plain(trend.Groups[0].Value)} to {Plain(trend.Groups[^1].Value)}";

    /// <summary>
    /// A value up to which something is claimed, no larger: whole where all values are, else to a hundredth of the range's size.
    /// </summary>
    internal static double Down(FactorTrend trend, double value) => Rounded(trend, value, Math.Floor);

    /// <summary>A value from which on something is claimed, no smaller.</summary>
    internal static double Up(FactorTrend trend, double value) => Rounded(trend, value, Math.Ceiling);

    private static double Rounded(FactorTrend trend, double value, Func<double, double> round)
    {
        if (trend.Groups.Any(g => g.Value == value))
        {
            return value;
        }

        double step = trend.IsCount ? 1
            : Math.Pow(10, Math.Floor(Math.Log10(trend.Groups[^1].Value - trend.Groups[0].Value)) - 2);
        double steps = value / step;
        double whole = Math.Abs(steps - Math.Round(steps)) < 1e-6 ? Math.Round(steps) : round(steps);
        return Math.Clamp(Math.Round(whole * step, 12), trend.Groups[0].Value, trend.Groups[^1].Value);
    }

    private static (double Value, Interval Interval) Slope(TrendBand band, TrendLine line) =>
        band.WithinLots is { } within ? (within.SlopeDb, within.IntervalDb) : (line.SlopeDb, line.SlopeIntervalDb);

    // As many decimals as show two digits of the half-width, two at least.
    internal static int SlopeDigits(Interval interval) =>
        interval.Width > 0 && double.IsFinite(interval.Width)
            ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(interval.Width / 2)), 2, 9) : 2;

    internal static string Fixed(double value, int digits) =>
        Sign(value.ToString("F" + Plain(digits), System.Globalization.CultureInfo.InvariantCulture));

    private static string Low(double value, int digits) =>
        Fixed(Math.Floor((value * Math.Pow(10, digits)) + 1e-6) / Math.Pow(10, digits), digits);

    private static string High(double value, int digits) =>
        Fixed(Math.Ceiling((value * Math.Pow(10, digits)) - 1e-6) / Math.Pow(10, digits), digits);
}
