using SweepStats.Receivers;
using SweepStats.Report.Text;
using SweepStats.Statistics;

namespace SweepStats.Report.Receivers;

/// <summary>A test with receivers on the console: the answer first, then what it rests on, what to do next, and what it cannot
/// show.</summary>
public static class ReceiverText
{
    /// <summary>Names in a sentence longer than this are cut; receiver.csv has them in full.</summary>
    private const int LongestName = 28;

    /// <summary>The first screen: at most 25 lines of 80 columns; how many lines did not fit is said.</summary>
    /// <param name="test">The test.</param>
    /// <param name="kept">Lines of the screen that the caller needs.</param>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> FirstScreen(ReceiverTest test, int kept = 0)
    {
        ArgumentNullException.ThrowIfNull(test);
        string[] last = [.. Closing(test)];
        ToldLine[] all = [.. Told(test)];
        // The answer, and one line more for what does not fit.
        int left = ScreenLines.Most - kept - Answer(test).Sum(Height) - 1 - last.Sum(Height);
        HashSet<ToldLine> shown = [];
        foreach (ToldLine line in all.OrderBy(l => l.Rank).TakeWhile(l => (left -= Height(l.Text)) >= 0))
        {
            shown.Add(line);
        }

        int hidden = all.Length - shown.Count;
        string[] more = hidden == 0 ? [] : [$"More with --verbose: {Printed.Count(hidden, "line")}."];
        return [.. Answer(test), .. all.Where(shown.Contains).Select(l => l.Text), .. more, .. last];
    }

    /// <summary>All of it, however long.</summary>
    /// <param name="test">The test.</param>
    public static IReadOnlyList<string> Whole(ReceiverTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        return [.. Answer(test), .. Told(test).Select(l => l.Text), .. Closing(test)];
    }

    internal static string Name(ReceiverObservation observation) => PlainText.Short(observation.Name, LongestName);

    internal static string OneSided(Confidence confidence) => $"{Printed.Level(confidence)}, one-sided";

    private static int Height(string line) => WrappedLine.Of(line, WrappedLine.Usual).Count;

    // Without a claim what the groups show is the answer.
    private static IEnumerable<string> Answer(ReceiverTest test)
    {
        string counted =
            $"{Printed.Plain(test.Groups.Sum(g => g.Observations.Length))} of "
                + $"{Printed.Count(test.Observations.Length, "observation")} taken as evidence.";
        return test.Question.Claim is { } claim
            ? [$"Claim SE ≥ {Printed.Exact(claim.Value, "dB")}: {Outcome(test)}. {Unshown(test)}{counted}"]
            : test.Groups.IsEmpty ? [$"Nothing is shown. {counted}"]
            : [];
    }

    // What all groups show comes before why any of them does.
    private static IEnumerable<ToldLine> Told(ReceiverTest test)
    {
        foreach (StationGroup group in test.Groups)
        {
            yield return new ToldLine(GroupText.Headline(group, test.Question),
                group is { Contradiction: null, Claim: not ClaimOutcome.Refuted } ? 0 : -1, group);
            foreach ((int rank, string line) in GroupText.Details(group, test).Index())
            {
                yield return new ToldLine(line, rank + 2, group);
            }
        }

        foreach (ReceiverObservation unused in test.Observations.Where(o => o.State != EvidenceState.Counts))
        {
            yield return new ToldLine($"No evidence, {Name(unused)}: {Because(unused)}", unused.HeardCovered ? -1 : 1, unused);
        }
    }

    private static string Outcome(ReceiverTest test)
    {
        int bands = test.Groups.Length, missing = test.Groups.Count(g => g.Claim != ClaimOutcome.Supported);
        return test.Claim switch
        {
            ClaimOutcome.Supported => $"supported {TestedBands.Where(test)} ({OneSided(test.Question.Confidence)})",
            ClaimOutcome.Refuted => "refuted, since a station is still heard that should be silent",
            _ when test.HeardAside is [var one] => $"not shown, since {Name(one)} was heard under the cover and is no evidence",
            _ when test.HeardAside is [_, ..] aside =>
                $"not shown, since {Printed.Count(aside.Length, "station")} without evidence were heard under the cover",
            _ => bands > 1 ? $"not shown in {Printed.Plain(missing)} of the {Printed.Plain(bands)} tested bands" : "not shown",
        };
    }

    private static string Unshown(ReceiverTest test) =>
        test.Claim == ClaimOutcome.Supported ? TestedBands.Unshown(test) : string.Empty;

    private static string Because(ReceiverObservation observation) => observation.State switch
    {
        EvidenceState.Uncontrolled =>
            "state whether it was heard without the cover (uncovered_heard, --uncovered). Silence alone proves nothing.",
        EvidenceState.SilentUncovered when observation.HeardCovered => "heard under the cover but not without it. Test again.",
        EvidenceState.SilentUncovered => "it was silent without the cover too. Use a stronger station or a better receiver.",
        _ => "check level and sensitivity. It was heard, although its level is stated "
            + $"{PrintedLevel.Ratio(-observation.MarginDb)} below the sensitivity.",
    };

    private static IEnumerable<string> Closing(ReceiverTest test)
    {
        int reckoned = test.Groups.Sum(g => g.Observations.Count(o => o.Level.Origin == LevelOrigin.FreeSpace));
        if (reckoned > 0)
        {
            string levels = reckoned == 1 ? "the level that is" : $"the {Printed.Plain(reckoned)} levels that are";
            yield return $"Measure {levels} reckoned as if in free space. Often less arrives, and the shielding shown is then "
                + "too high.";
        }

        if (test.Groups.Any(g => g.Observations.Length > 1 && g.Band is { } band && band.Start < band.Stop))
        {
            yield return $"Stations up to {Printed.Plain(test.Question.Ratio)} times apart in frequency are taken to meet the "
                + "same shielding (--within).";
        }

        yield return "State as sensitivity the level at which this receiver falls silent as used: squelch, gain control or a "
            + "digital mode ends reception earlier than the data sheet says.";
        yield return $"Not shown: other frequencies, other places and polarisations, single seams{TestedBands.Above(test)}.";
        yield return "An estimate for this cover, place and set-up; no proof that a person, a device or a building is "
            + "protected. Local codes and licensed practice prevail.";
    }

    /// <param name="Text">The line.</param>
    /// <param name="Rank">Lower ranks go before where there is little room.</param>
    /// <param name="About">What it is about, so that two lines alike stay two.</param>
    private sealed record ToldLine(string Text, int Rank, object About);
}
