using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Report.Answer;
using SweepStats.Report.Choice;
using SweepStats.Report.Fields;
using SweepStats.Report.Findings;
using SweepStats.Report.Lots;
using SweepStats.Report.Sheets;
using SweepStats.Report.Text;
using SweepStats.Report.Trends;
using SweepStats.Shielding;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Screens;

/// <summary>What a console shows first: the answer, what limits it and what to do, the weakest specimens.</summary>
public static class FirstScreenWords
{
    private const int WeakestShown = 4;
    internal const int NamesOnScreen = 3;
    private const int MostPlacesInHead = 2;
    internal const int LongestTitle = 70;

    // A table of two specimens with its head, and a line on the choice.
    private const int RoomForSpecimens = 5;

    private const int RoomForAnswers = 3;

    // Whether lots differ, and which to take: before more specimens, since both are asked for.
    private const int RoomForLots = 4;

    /// <summary>How a reader comes to what the first screen leaves out.</summary>
    private const string Verbose = "--verbose";

    /// <summary>The result of a run on one screen: verdict, gravest findings, weakest specimens, lots, choice.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="columns">Width of the console.</param>
    /// <param name="closing">Lines that end the screen; what did not fit is named before them.</param>
    /// <returns>Lines without line ends, not yet broken; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> FirstScreen(AnalysisResult result, int columns, IReadOnlyList<string> closing)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(closing);
        ScreenLines screen = Started(result, columns, closing);
        int lots = result.Lots.Lots.Length > 1 ? RoomForLots : 0;
        List<string> left = [.. Findings(result, screen, RoomForSpecimens + lots)];
        left.AddRange(Weakest(result, screen, Math.Max(RoomForAnswers, lots)));
        left.AddRange(Answers(result, screen));
        return [.. screen.Lines, .. NotShown(left), .. closing];
    }

    /// <summary>
    /// Whether a measurement can be trusted, on one screen: verdict, gravest findings, and what was not tested.
    /// </summary>
    /// <param name="result">What was found.</param>
    /// <param name="columns">Width of the console.</param>
    /// <param name="closing">Lines that end the screen.</param>
    /// <returns>Lines without line ends, not yet broken; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> FirstCheck(AnalysisResult result, int columns, IReadOnlyList<string> closing)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(closing);
        string[] checks = [.. ChecksCounted(result)];
        ScreenLines screen = Started(result, columns, [.. checks, .. closing]);
        string[] left = [.. Findings(result, screen, beside: 0)];
        return [.. screen.Lines, .. NotShown(left), .. checks, .. closing];
    }

    private static IEnumerable<string> ChecksCounted(AnalysisResult result)
    {
        int clear = result.Checks.Count(c => CheckWords.CheckOutcome(result, c) == CheckWords.NothingFoundBy);
        yield return $"{Plain(clear)} of {Count(result.Checks.Length, "check")} found nothing.";
        string[] untested = [.. result.Checks.Where(c => c.UntestedBecause is not null).Select(c => c.Code)];
        if (untested.Length > 0)
        {
            yield return $"Could not be tested, or not wholly: {string.Join(", ", untested)}.";
        }

        int excluded = result.Campaign.Excluded.Length;
        if (excluded > 0)
        {
            yield return $"Left out by the user: {Count(excluded, "sweep")}; "
                + $"{(excluded == 1 ? "its reason" : "their reasons")}: {Verbose}";
        }
    }

    private static ScreenLines Started(AnalysisResult result, int columns, IReadOnlyList<string> closing)
    {
        // Two lines more for what does not fit.
        var screen = new ScreenLines(columns, 2 + closing.Sum(line => WrappedLine.Of(line, columns).Count));
        screen.Add(PlainText.Short(result.Title, LongestTitle), VerdictWords.Headline(result), VerdictWords.TrustReason(result));
        if (DecisionWords.DecisionRuleInBrief(result) is { } rule)
        {
            screen.Add(rule);
        }

        screen.Add(FieldWords.FieldInBrief(result));
        if (UndecidedWords.RequirementStep(result) is { } step)
        {
            screen.Add(step);
        }

        screen.Add(StatedDays.Remark(result) is { } remark ? [remark] : Array.Empty<string>());

        return screen;
    }

    // Gravest first, and the first of the faults whatever room it takes. From the first that does not fit on they are counted, so
    // that none is passed over for a lesser one.
    private static IEnumerable<string> Findings(AnalysisResult result, ScreenLines screen, int beside)
    {
        FindingGroup[] groups = [.. FindingGroup.Of(result.Findings)];
        int shown = 0;
        while (shown < groups.Length && groups[shown].Severity != Severity.Note && IsAdded(groups[shown], screen, beside))
        {
            shown++;
        }

        if (shown == 0 && groups is [{ Severity: Severity.Fault } gravest, ..])
        {
            screen.Add(InBrief(gravest));
            shown = 1;
        }

        // What limits the claim comes before specimens and lots.
        if (shown == 0 && groups is [{ Severity: Severity.Warning } first, ..] && screen.TryAdd(InBrief(first)))
        {
            shown = 1;
        }

        return groups.Skip(shown).GroupBy(g => g.Severity).OrderByDescending(g => g.Key)
            .Select(g => Count(g.Count(), SummaryWords.Weight(g.Key).ToLowerInvariant()));
    }

    // In full where half of the room is left to others, else the first sentences, marked as cut.
    private static bool IsAdded(FindingGroup group, ScreenLines screen, int beside) =>
        screen.TryAdd(InFull(group), beside + (screen.Left / 2)) || screen.TryAdd(InBrief(group), beside);

    private static string[] InFull(FindingGroup group) =>
        [$"{Head(group)}: {Message(group)}", $"  Next: {PlainText.Of(group.NextStep)}"];

    internal static string[] InBrief(FindingGroup group) =>
        [$"{Head(group)}: {Beginning(Message(group))}", $"  Next: {Beginning(PlainText.Of(group.NextStep))}"];

    private static string Message(FindingGroup group) =>
        PlainText.Of((group.CommonMessage is null ? $"{Count(group.Findings.Length, "finding")}; the first: " : string.Empty)
            + (group.CommonMessage ?? group.Findings[0].Message));

    private static string Head(FindingGroup group)
    {
        string pieces = Listed(
            [.. group.Findings.Select(f => f.Specimen).OfType<SpecimenName>().Distinct().Select(SpecimenLabel)], NamesOnScreen);
        string place = group.Findings is [{ Where: { IsDefaultOrEmpty: false, Length: <= MostPlacesInHead } } only]
            ? FindingWords.Place(FindingWords.Stretches(only)) : string.Empty;
        return $"{SummaryWords.Weight(group.Severity)} "
            + $"({PlainText.Of(group.Code)}){(pieces.Length == 0 ? string.Empty : $", {pieces}")}{place}";
    }

    // What is cut off is seen to be cut off.
    private static string Beginning(string text)
    {
        for (int i = 0; i + 2 < text.Length; i++)
        {
            if (text[i] == '.' && text[i + 1] == ' ' && char.IsUpper(text[i + 2]))
            {
                return text[..(i + 1)] + " …";
            }
        }

        return text;
    }

    /// <summary>Places of the specimens in the result: who does not meet the requirement first, then who shields least.</summary>
    internal static IReadOnlyList<int> WeakestFirst(AnalysisResult result)
    {
        Dictionary<SpecimenName, RequirementOutcome> outcomes = result.Verdict.Specimens.IsDefaultOrEmpty ? []
            : result.Verdict.Specimens.ToDictionary(s => s.Name, s => s.Outcome);
        return
        [
            .. Enumerable.Range(0, result.Bands.Length)
                .OrderBy(i =>
                    Concern(outcomes.TryGetValue(result.Bands[i].Name, out RequirementOutcome outcome) ? outcome : null))
                .ThenBy(i => result.Bands[i].AtLeast?.Value ?? double.NegativeInfinity),
        ];
    }

    /// <summary>Place of the specimen with the lowest claim; of the first of the weakest where there is none.</summary>
    internal static int LowestClaim(AnalysisResult result) =>
        WeakestFirst(result).MinBy(i => result.Bands[i].AtLeast?.Value ?? double.PositiveInfinity);

    // Rows with long names take two lines each: then fewer.
    private static IEnumerable<string> Weakest(AnalysisResult result, ScreenLines screen, int beside)
    {
        int[] order = [.. WeakestFirst(result).Take(WeakestShown)];
        IReadOnlyList<string> names = ShortNames.Of([.. order.Select(i => result.Bands[i].Name.ToString())], LongestSpecimen);
        for (int rows = order.Length; rows > 0; rows--)
        {
            IEnumerable<IReadOnlyList<string>> shown =
                order.Take(rows).Zip(names, (i, name) => WeakestRow(result, name, result.Bands[i], result.Curves[i]));
            if (screen.TryAdd([WeakestHead(result), .. TextTable.Of(WeakestColumns(result), shown)], rows > 1 ? beside : 0))
            {
                return rows == result.Bands.Length ? [] : [Count(result.Bands.Length - rows, "specimen")];
            }
        }

        return result.Bands.Length == 0 ? [] : [Count(result.Bands.Length, "specimen")];
    }

    private static string WeakestHead(AnalysisResult result) =>
        $"{(result.Verdict.Trust == Trust.Untrustworthy ? "At face value only: shielding" : "Shielding")} "
            + $"{VerdictWords.AtAll(result.Bands[0])}"
            + $" ({Level(result.Plan.Confidence)}"
            + $"{(result.Bands.Length > 1 ? $"; first the weakest of {Count(result.Bands.Length, "specimen")}"
                : string.Empty)}):";

    private static int Concern(RequirementOutcome? outcome) => outcome switch
    {
        RequirementOutcome.Fails => 0,
        RequirementOutcome.CannotTell => 1,
        RequirementOutcome.Undecided => 2,
        _ => 3,
    };

    private static IReadOnlyList<string> WeakestColumns(AnalysisResult result) =>
    [
        "Specimen", "SE", "weakest at", "bounds only",
        .. result.Plan.Requirement is null ? Array.Empty<string>()
            : [$"requirement{SummaryWords.AtLevel(result, result.Plan.Rule?.Level)}"],
    ];

    private static IReadOnlyList<string> WeakestRow(AnalysisResult result, string name, BandStatement band, ShieldingCurve curve)
    {
        int values = curve.Readings.Count(r => r is ShieldingReading.Measured);
        return
        [
            name,
            band.AtLeast is { } claim ? Bound(claim) : "no claim",
            band.WeakestAt is { } at ? Frequency(at) : Nothing,
            values == band.PointCount ? "none" : values == 0 ? "all"
                : $"{Plain(band.PointCount - values)} of {Plain(band.PointCount)}",
            .. result.Plan.Requirement is null ? Array.Empty<string>() : [RequirementWords.Stands(result, band.Name) ?? Nothing],
        ];
    }

    // What of an answer does not fit is named, since a limit of what is claimed may stand in it. The first line of a trend
    // claims, and what it rests on stands in those after it.
    private static IEnumerable<string> Answers(AnalysisResult result, ScreenLines screen)
    {
        string[] trend = result.Trend is { } factor ? [.. TrendWords.TrendAnswer(result, factor)] : [];
        string[] lots = result.Lots.Lots.Length > 1 ? [.. LotAnswerWords.LotsAnswer(result)] : [];
        string[] choice = result.Choice?.Bands[0] is { } ranking ? [.. ChoiceWords.ChoiceAnswer(result, ranking)] : [];
        string[] left = [.. screen.TryAdd(trend) ? Array.Empty<string>() : ["the trend"]];
        return [.. left, .. WholeOrBegun(lots, "lots", screen), .. WholeOrBegun(choice, "the choice", screen)];
    }

    // From the first line that does not fit on all are left.
    private static string[] WholeOrBegun(string[] lines, string subject, ScreenLines screen)
    {
        int shown = lines.TakeWhile(line => screen.TryAdd([line])).Count();
        return shown == lines.Length ? [] : shown > 0 ? [$"more on {subject}"] : [subject];
    }

    internal static IEnumerable<string> NotShown(IReadOnlyList<string> left) =>
        left.Count == 0 ? [] : [$"Not shown here: {string.Join(", ", left)}. All of it: {Verbose}"];
}
