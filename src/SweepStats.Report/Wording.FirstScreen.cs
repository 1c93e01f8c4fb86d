using SweepStats.Bands;
using SweepStats.Checks;
using SweepStats.Sweeps;
using SweepStats.Verdicts;

namespace SweepStats.Report;

/// <content>What a console shows first: the answer, the weakest specimens, what limits the claim.</content>
public static partial class Wording
{
    private const int WeakestShown = 4;
    private const int NamesOnScreen = 3;
    private const int LongestTitle = 70;

    // The findings come last and say what to do: so much is left for them.
    private const int RoomForFindings = 5;

    /// <summary>The result of a run on one screen: verdict, weakest specimens, lots, choice, and the gravest findings.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="columns">Width of the console.</param>
    /// <param name="closing">Lines that end the screen; the last of what does not fit stands before them.</param>
    /// <returns>Lines without line ends, not yet broken; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> FirstScreen(AnalysisResult result, int columns, IReadOnlyList<string> closing)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(closing);
        ScreenLines screen = Started(result, columns, closing);
        Weakest(result, screen);
        foreach (string line in OneLineEach(result))
        {
            screen.TryAdd([line], RoomForFindings);
        }

        return [.. Finished(result, screen), .. closing];
    }

    /// <summary>Whether a measurement can be trusted, on one screen: verdict, gravest findings, and what was not tested.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="columns">Width of the console.</param>
    /// <param name="closing">Lines that end the screen.</param>
    /// <returns>Lines without line ends, not yet broken; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> FirstCheck(AnalysisResult result, int columns, IReadOnlyList<string> closing)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(closing);
        string[] untested = [.. result.Checks.Where(c => c.UntestedBecause is not null).Select(c => c.Code)];
        int clear = result.Checks.Count(c => CheckOutcome(result, c) == NothingFoundBy);
        int excluded = result.Campaign.Excluded.Length;
        string[] checks =
        [
            $"Looked for and not found: {Plain(clear)} of {Count(result.Checks.Length, "doubt")}.",
            .. untested.Length == 0 ? Array.Empty<string>() : [$"Could not be tested, or not wholly: {string.Join(", ", untested)}."],
            .. excluded == 0 ? Array.Empty<string>() : [$"Left out by the user: {Count(excluded, "sweep")}; {(excluded == 1 ? "its reason" : "their reasons")}: --verbose"],
        ];
        ScreenLines screen = Started(result, columns, [.. checks, .. closing]);
        return [.. Finished(result, screen), .. checks, .. closing];
    }

    private static ScreenLines Started(AnalysisResult result, int columns, IReadOnlyList<string> closing)
    {
        // One line more for what does not fit.
        var screen = new ScreenLines(columns, 1 + closing.Sum(line => WrappedLine.Of(line, columns).Count));
        screen.Add(PlainText.Short(result.Title, LongestTitle), Headline(result), TrustReason(result));
        if (result.Verdict.Requirement is not (null or RequirementOutcome.Meets) && OutcomeReason(result) is { } reason)
        {
            screen.TryAdd([reason], RoomForFindings);
        }

        screen.Add(FieldInBrief(result));
        return screen;
    }

    private static IEnumerable<string> OneLineEach(AnalysisResult result)
    {
        IEnumerable<string> trend = result.Trend is { } factor ? TrendAnswer(result, factor).Take(1) : [];
        IEnumerable<string> lots = result.Lots.Lots.Length > 1 ? LotsAnswer(result).Take(2) : [];
        IEnumerable<string> choice = result.Choice?.Bands[0] is { } ranking ? ChoiceAnswer(result, ranking).Take(1) : [];
        return [.. trend, .. lots, .. choice];
    }

    // Who does not meet the requirement first, then who shields least.
    private static void Weakest(AnalysisResult result, ScreenLines screen)
    {
        Dictionary<SpecimenName, RequirementOutcome> outcomes = result.Verdict.Specimens.IsDefaultOrEmpty ? [] : result.Verdict.Specimens.ToDictionary(s => s.Name, s => s.Outcome);
        BandStatement[] weakest =
        [
            .. result.Bands.OrderBy(b => Concern(outcomes.TryGetValue(b.Name, out RequirementOutcome outcome) ? outcome : null))
                .ThenBy(b => b.AtLeast?.Value ?? double.NegativeInfinity).Take(WeakestShown),
        ];
        if (weakest.Length == 0)
        {
            return;
        }

        string more = result.Bands.Length > 1 ? $"; first the weakest of {Count(result.Bands.Length, "specimen")}" : string.Empty;
        string face = result.Verdict.Trust == Trust.Untrustworthy ? "At face value only: shielding" : "Shielding";
        string where = $"{face} {AtAll(weakest[0])}{more}:";
        // Rows with long names take two lines each: then fewer.
        int rows = weakest.Length;
        while (rows > 0 && !screen.TryAdd(
            [where, .. TextTable.Of(WeakestColumns(result), weakest.Take(rows).Select(band => WeakestRow(result, band)))], RoomForFindings))
        {
            rows--;
        }
    }

    private static int Concern(RequirementOutcome? outcome) => outcome switch
    {
        RequirementOutcome.Fails => 0,
        RequirementOutcome.CannotTell => 1,
        RequirementOutcome.Undecided => 2,
        _ => 3,
    };

    private static IReadOnlyList<string> WeakestColumns(AnalysisResult result) =>
    [
        "Specimen", $"SE{AtLevel(result, result.Plan.Confidence)}", "weakest at", "bounds only",
        .. result.Plan.Requirement is null ? Array.Empty<string>() : [$"requirement{AtLevel(result, result.Plan.Rule?.Level)}"],
    ];

    private static IReadOnlyList<string> WeakestRow(AnalysisResult result, BandStatement band)
    {
        int bounds = band.CappedCount + band.OverloadedCount;
        return
        [
            PlainText.Short(band.Name.ToString(), LongestSpecimen),
            band.AtLeast is { } claim ? Bound(claim) : "no claim",
            band.WeakestAt is { } at ? Frequency(at) : Nothing,
            bounds == 0 ? "none" : $"{Plain(bounds)} of {Plain(band.PointCount)}",
            .. result.Plan.Requirement is null ? Array.Empty<string>() : [Stands(result, band.Name) ?? Nothing],
        ];
    }

    // Gravest first. From the first that does not fit on they are counted, so that none is passed over for a lesser one.
    private static IReadOnlyList<string> Finished(AnalysisResult result, ScreenLines screen)
    {
        FindingGroup[] groups = [.. FindingGroup.Of(result.Findings)];
        int shown = 0;
        while (shown < groups.Length && groups[shown].Severity != Severity.Note && screen.TryAdd(InBrief(groups[shown])))
        {
            shown++;
        }

        string[] rest =
        [
            .. groups.Skip(shown).GroupBy(g => g.Severity).OrderByDescending(g => g.Key)
                .Select(g => Count(g.Count(), Weight(g.Key).ToLowerInvariant())),
        ];
        return rest.Length == 0 ? screen.Lines : [.. screen.Lines, $"{(shown == 0 ? "Not shown here" : "Beside these")}: {string.Join(", ", rest)}."];
    }

    private static string[] InBrief(FindingGroup group)
    {
        string pieces = Listed([.. group.Findings.Select(f => f.Specimen).OfType<SpecimenName>().Distinct().Select(SpecimenLabel)], NamesOnScreen);
        string head = $"{Weight(group.Severity)} ({PlainText.Of(group.Code)}){(pieces.Length == 0 ? string.Empty : $", {pieces}")}";
        string several = group.CommonMessage is null ? $"{Count(group.Findings.Length, "finding")}; the first: " : string.Empty;
        return
        [
            $"{head}: {several}{FirstSentence(PlainText.Of(group.CommonMessage ?? group.Findings[0].Message))}",
            $"  Next: {FirstSentence(PlainText.Of(group.NextStep))}",
        ];
    }

    private static string FirstSentence(string text)
    {
        for (int i = 0; i + 2 < text.Length; i++)
        {
            if (text[i] == '.' && text[i + 1] == ' ' && char.IsUpper(text[i + 2]))
            {
                return text[..(i + 1)];
            }
        }

        return text;
    }
}
