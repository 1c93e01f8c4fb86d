using SweepStats.Receivers;
using SweepStats.Report.Text;

namespace SweepStats.Report.Receivers;

/// <summary>What stations of like frequency show, in sentences.</summary>
internal static class GroupText
{
    /// <summary>The answer of the group: "145 MHz: SE ≥ 57.1 dB (95 %, one-sided).".</summary>
    public static string Headline(StationGroup group, ReceiverQuestion question) =>
        $"{Where(group)}: {Shown(group, question)}{Aside(group)}";

    /// <summary>What becomes of the claim, what to do next, and what it rests on; indented.</summary>
    public static IEnumerable<string> Details(StationGroup group, ReceiverTest test)
    {
        IEnumerable<string?> lines = group.Contradiction is not null ? []
            : [Claimed(group, test), ForClaim(group), Next(group), Rests(group), Sweeps(group, test.Question)];
        return lines.OfType<string>().Select(line => "  " + line);
    }

    internal static string Where(StationGroup group) =>
        group.Band is { } band ? PrintedFrequency.Band(band) : "At the tested frequency";

    private static string Shown(StationGroup group, ReceiverQuestion question)
    {
        string oneSided = ReceiverText.OneSided(question.Confidence);
        return group switch
        {
            { Contradiction: { } contradiction } => Contradicted(contradiction),
            { AtLeast: null, AtMost: null } => Unsure(group),
            { Interval: { } both, AtLeast: { } low } =>
                $"SE is {PrintedLevel.Interval(both.Low, both.High)} ({Printed.Level(question.Confidence)}). "
                    + $"{Least(low.Value, oneSided)}",
            { AtLeast: { } low, AtMost: { } high } => $"{Least(low.Value, oneSided)} {Most(high.Value, oneSided)}",
            { AtLeast: { } low } =>
                $"{Least(low.Value, oneSided)} There is no upper bound: no station taken as evidence was still heard.",
            _ => $"{Most(group.AtMost!.Value.Value, oneSided)} No shielding is shown: no station fell silent.",
        };
    }

    // Not after a contradiction: nothing is claimed there.
    private static string Aside(StationGroup group) =>
        group is { AtLeast: not null, Contradiction: null, HeardAside: [var first, .. var more] }
        ? $" Put the row of {ReceiverText.Name(first)} right "
            + $"first{(more.IsEmpty ? string.Empty : $", and {Printed.Plain(more.Length)} more")}: heard under the cover, it "
            + "may refute this."
        : string.Empty;

    private static string Least(double db, string sureness) =>
        db > 0 ? $"SE ≥ {Printed.LowTenths(db)} dB ({sureness})." : "It is not shown that anything is shielded.";

    private static string Most(double db, string sureness) => $"SE ≤ {Printed.HighTenths(db)} dB ({sureness}).";

    private static string Contradicted(MarginContradiction pair) =>
        $"nothing is claimed. {ReceiverText.Name(pair.Silent)} fell silent at a margin of "
        + $"{PrintedLevel.Ratio(pair.Silent.MarginDb)}, "
        + $"{ReceiverText.Name(pair.Heard)} is still heard at {PrintedLevel.Ratio(pair.Heard.MarginDb)}: both cannot be right. "
        + "Check their levels, sensitivities, squelch and places.";

    private static string Unsure(StationGroup group)
    {
        ReceiverObservation one = group.Observations[^1];
        return $"state --level-u and --sensitivity-u for a bound. The margin is {PrintedLevel.Ratio(one.MarginDb)}; "
            + $"{(one.HeardCovered ? "heard" : "silent")} shows "
            + $"SE {(one.HeardCovered ? "≤" : "≥")} {PrintedLevel.Ratio(one.MarginDb)} only if both figures were exact.";
    }

    private static string? Rests(StationGroup group)
    {
        ReceiverObservation? silent = group.Observations.LastOrDefault(o => !o.HeardCovered),
            heard = group.Observations.FirstOrDefault(o => o.HeardCovered);
        string[] parts =
        [
            .. silent is null ? Array.Empty<string>() : [$"silent up to a margin of {Margin(silent)}"],
            .. heard is null ? Array.Empty<string>() : [$"heard from a margin of {Margin(heard)}"],
        ];
        return group.AtLeast is null && group.AtMost is null ? null : $"Stations: {string.Join("; ", parts)}.";
    }

    private static string Margin(ReceiverObservation observation) =>
        $"{PrintedLevel.Ratio(observation.MarginDb)} ± {PrintedLevel.Ratio(observation.UncertaintyDb)} "
            + $"({ReceiverText.Name(observation)})";

    // With one group the first line of all says it.
    private static string? Claimed(StationGroup group, ReceiverTest test)
    {
        string outcome = group.Claim switch
        {
            ClaimOutcome.Supported => "supported",
            ClaimOutcome.Refuted when test.Claim != ClaimOutcome.Refuted => "refuted by this band alone. Test it again: among "
                + $"{Printed.Plain(test.Groups.Length)} bands chance may do so",
            ClaimOutcome.Refuted => "refuted",
            _ => "not shown",
        };
        bool told = test.Question.Claim is null || test.Groups.Length == 1;
        return told ? null : $"Claim SE ≥ {Printed.Exact(test.Question.Claim!.Value.Value, "dB")}: {outcome}.";
    }

    private static string? Next(StationGroup group) => group switch
    {
        { Next: { } next, Interval: { } now } =>
            $"Next: test a station with a margin of {PrintedLevel.Ratio(next.MarginDb)}{AtReceiver(group, next.MarginDb)}. "
                + $"It tells most: the interval should shrink from {PrintedLevel.Ratio(now.Width)} to about "
                + $"{PrintedLevel.Ratio(next.WidthDb)}.",
        { Interval: not null } =>
            "Next: know levels and sensitivities better. One more station like these hardly shortens the interval.",
        { AtMost: null, AtLeast: not null, LargestSilentDb: { } most } =>
            $"Next: test a station with a margin above {PrintedLevel.Ratio(most)}{AtReceiver(group, most)}. Smaller ones tell "
                + "little more.",
        { AtLeast: null, AtMost: not null, SmallestHeardDb: { } least } =>
            $"Next: test a station with a margin below {PrintedLevel.Ratio(least)}{AtReceiver(group, least)}. Larger ones tell "
                + "little more.",
        _ => null,
    };

    // The level only where one sensitivity goes for all.
    private static string AtReceiver(StationGroup group, double margin) =>
        group.Observations.Select(o => o.SensitivityDbm).Distinct().ToArray() is [var sensitivity]
        ? $", {PrintedLevel.Level(sensitivity + margin, Quantities.LevelScale.DecibelMilliwatts)} at this receiver"
        : string.Empty;

    private static string? ForClaim(StationGroup group) => group.SupportingMarginDb is not { } needed ? null
        : $"For the claim: one more silent station with a margin of {Printed.HighTenths(needed)} dB would show "
            + $"it{AtReceiver(group, needed)}.";

    private static string? Sweeps(StationGroup group, ReceiverQuestion question)
    {
        if (group.RangeForSweepsDb(question.Claim) is not { } range || !(range > 0))
        {
            return null;
        }

        string plan = question.Claim is { } claim
            ? $"; 'sweepstats plan --claim {Printed.Plain(claim.Value)}' says what it takes" : string.Empty;
        return $"Sweeps instead: they need a usable dynamic range of at least {Printed.HighTenths(range)} dB{plan}.";
    }
}
