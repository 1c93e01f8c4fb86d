using SweepStats.Receivers;
using SweepStats.Statistics;

namespace SweepStats.Report.Receivers;

/// <summary>A test with receivers on the console: the answer first, then what it rests on, what to do next, and what it cannot show.</summary>
public static class ReceiverText
{
    /// <summary>Names in a sentence longer than this are cut; receiver.csv has them in full.</summary>
    private const int LongestName = 28;

    /// <summary>The first screen: at most 25 lines of 80 columns; what does not fit is named.</summary>
    /// <param name="test">The test.</param>
    /// <param name="kept">Lines of the screen that the caller needs.</param>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> FirstScreen(ReceiverTest test, int kept = 0)
    {
        ArgumentNullException.ThrowIfNull(test);
        string[] last = [.. Closing(test)];
        // One line more for what does not fit.
        var screen = new ScreenLines(WrappedLine.Usual, last.Sum(Height) + 1 + kept);
        screen.Add(Answer(test));
        int hidden = test.Groups.Count(g => !screen.TryAdd([GroupText.Headline(g, test.Question)]));
        hidden += test.Groups.Sum(g => GroupText.Details(g, test).Count(line => test.Groups.Length > 1 || !screen.TryAdd([line])));
        hidden += Unused(test).Count(line => !screen.TryAdd([line]));
        if (hidden > 0)
        {
            screen.Add($"{Wording.Count(hidden, "line")} more: --verbose prints all.");
        }

        screen.Add(last);
        return screen.Lines;
    }

    /// <summary>All of it, however long.</summary>
    /// <param name="test">The test.</param>
    public static IReadOnlyList<string> Whole(ReceiverTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        IEnumerable<string> groups = test.Groups.SelectMany(g => GroupText.Details(g, test).Prepend(GroupText.Headline(g, test.Question)));
        return [Answer(test), .. groups, .. Unused(test), .. Closing(test)];
    }

    internal static string Name(ReceiverObservation observation) => PlainText.Short(observation.Name, LongestName);

    internal static string OneSided(Confidence confidence) => $"{Wording.Level(confidence)}, one-sided";

    private static int Height(string line) => WrappedLine.Of(line, WrappedLine.Usual).Count;

    private static string Answer(ReceiverTest test)
    {
        string counted = $"{Wording.Count(test.Observations.Length, "observation")}, {test.Groups.Sum(g => g.Observations.Length)} of them evidence";
        return test.Groups.IsEmpty ? $"Nothing is shown: none of {Wording.Count(test.Observations.Length, "observation")} is evidence."
            : test.Question.Claim is not { } claim ? $"Test with receivers: {counted}."
            : $"Claim SE ≥ {Wording.Exact(claim.Value, "dB")}: {Outcome(test)} ({counted}).";
    }

    private static string Outcome(ReceiverTest test)
    {
        string where = test.Groups.Length == 1 ? "at the tested frequencies" : $"in each of the {test.Groups.Length} tested bands";
        return test.Claim switch
        {
            ClaimOutcome.Supported => $"supported {where} ({OneSided(test.Question.Confidence)})",
            ClaimOutcome.Refuted => "refuted: a station is still heard that should be silent",
            _ => "not shown",
        };
    }

    private static IEnumerable<string> Unused(ReceiverTest test) => test.Observations.Where(o => o.State != EvidenceState.Counts).Select(o => $"No evidence, {Name(o)}: {Because(o)}");

    private static string Because(ReceiverObservation observation) => observation.State switch
    {
        EvidenceState.Uncontrolled => "state whether it was heard without the cover. Silence alone proves nothing.",
        EvidenceState.SilentUncovered when observation.HeardCovered => "heard under the cover but not without it. Test again.",
        EvidenceState.SilentUncovered => "it was silent without the cover too. Use a stronger station or a better receiver.",
        _ => $"check level and sensitivity. It was heard, although its level is stated {Wording.Ratio(-observation.MarginDb)} below the sensitivity.",
    };

    private static IEnumerable<string> Closing(ReceiverTest test)
    {
        int reckoned = test.Groups.Sum(g => g.Observations.Count(o => o.Level.Origin == LevelOrigin.FreeSpace));
        if (reckoned > 0)
        {
            yield return $"Measure {Wording.Count(reckoned, "level")} that {(reckoned == 1 ? "is" : "are")} reckoned as if in free space. Often less arrives, and the shielding shown is then too high.";
        }

        if (test.Groups.Any(g => g.Observations.Length > 1 && g.Band is { } band && band.Start < band.Stop))
        {
            yield return $"Stations within {Wording.Plain(test.Question.Ratio)} times the lowest frequency are taken to meet the same shielding (--within).";
        }

        yield return "State the level at which this receiver falls silent as used: squelch, gain control and digital modes end reception well above the best sensitivity.";
        yield return $"Not shown: other frequencies, other places and polarisations, single seams{Above(test)}.";
        yield return "This is an estimate for this cover, place and set-up. It is no proof that a person, a device or a building is protected. Local codes and licensed practice prevail.";
    }

    private static string Above(ReceiverTest test) => test.Groups.Select(g => g.LargestSilentDb).Max() is { } most ? $", and shielding above {Wording.Ratio(most)}, the largest margin that fell silent" : string.Empty;
}
