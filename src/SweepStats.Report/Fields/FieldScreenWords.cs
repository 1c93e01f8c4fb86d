using SweepStats.Fields;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Lots;
using SweepStats.Report.Screens;
using SweepStats.Report.Text;
using SweepStats.Verdicts;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Fields;

/// <summary>What sweepstats field says on a console.</summary>
public static class FieldScreenWords
{
    private const int MostPulsesOnScreen = 6;

    /// <summary>What is left of field and pulse, on one screen.</summary>
    /// <param name="result">What was found.</param>
    /// <param name="columns">Width of the console.</param>
    /// <param name="closing">Lines that end the screen.</param>
    /// <returns>Lines without line ends, not yet broken; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> FirstField(AnalysisResult result, int columns, IReadOnlyList<string> closing)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentNullException.ThrowIfNull(closing);
        string[] cautions = [PulseWords.PulseCaution];
        var screen = new ScreenLines(columns, 2 + Heights([.. cautions, .. closing], columns));
        screen.Add(PlainText.Short(result.Title, FirstScreenWords.LongestTitle), VerdictWords.HeadlineWithReason(result));
        screen.Add(SteadyInBrief(result));
        screen.Add(PulseWords.PulseInFront(result));
        string[] left = Answers(result, screen, columns);
        return [.. screen.Lines, .. FirstScreenWords.NotShown(left), .. cautions, .. closing];
    }

    // What finds room is shown; the rest is named.
    private static string[] Answers(AnalysisResult result, ScreenLines screen, int columns)
    {
        string[] layers = [.. LayerWords.LayersText(result)];
        string[] anyPhase = [.. AnyPhase(result)];
        int shown = Table(result, screen, Heights([.. layers, .. anyPhase], columns));
        string[] left = [.. screen.TryAdd(anyPhase) ? Array.Empty<string>() : ["the peak for any phase"],
            .. screen.TryAdd(layers) ? Array.Empty<string>() : ["layers"], "rise", "width", "energy"];
        return shown < result.Pulses.Length ? [Count(result.Pulses.Length - shown, "specimen"), .. left] : left;
    }

    /// <summary>All of it.</summary>
    /// <param name="result">What was found.</param>
    /// <returns>Lines without line ends, not yet broken; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> FieldText(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return
        [
            PlainText.Of(result.Title), VerdictWords.HeadlineWithReason(result), .. SteadyInBrief(result), string.Empty,
            "Shielding at every measured frequency:", .. TextTable.Of(BlockedColumns, Kept(result).Select(KeptRow)),
                .. NeededInFull(result), string.Empty,
            PulseWords.PulseInFront(result), PulseWords.OutsideTaken(result.Plan.Pulse.Outside),
            .. TextTable.Of(PulseWords.PulseColumns, PulseWords.PulseRows(result)),
            .. PulseWords.PulseRemarks(result), string.Empty, .. LayerWords.LayersText(result),
            .. result.Layers.IsEmpty ? Array.Empty<string>() : [string.Empty],
            .. result.Plan.Field is null ? Array.Empty<string>() : [FieldWords.FieldCaution], PulseWords.PulseCaution,
        ];
    }

    private static readonly string[] BlockedColumns = ["Specimen", "SE", "field blocked", "power blocked"];

    private static int Heights(IEnumerable<string> lines, int columns) => lines.Sum(line => WrappedLine.Of(line, columns).Count);

    private static IEnumerable<string> SteadyInBrief(AnalysisResult result)
    {
        if (result.Plan.Field is not null)
        {
            yield return FieldWords.FieldInBrief(result).First();
        }

        ImmutableArray<ResidualField> all = Kept(result);
        ResidualField[] kept = [.. all.Where(k => k.Shielding is not null)];
        if (kept.Length > 0)
        {
            string where = result.Plan.Field is null
                ? $" {VerdictWords.AtAll(result.Bands[0])} ({Level(result.Plan.Confidence)})" : string.Empty;
            yield return KeptOut(kept, all, where);
        }

        foreach (string needed in NeededInBrief(result))
        {
            yield return needed;
        }
    }

    private static string KeptOut(ResidualField[] kept, ImmutableArray<ResidualField> all, string where)
    {
        ResidualField least = kept.MinBy(k => k.Shielding!.Value.Value)!;
        Decibels shielding = least.Shielding!.Value;
        string by = all.Length > 1 ? $" ({(kept.Length > 1 ? "least by" : "by")} {SpecimenLabel(least.Name)})" : string.Empty;
        string[] silent = [.. all.Where(k => k.Shielding is null).Select(k => SpecimenLabel(k.Name))];
        string others = silent.Length == 0 ? string.Empty : $" Nothing is claimed of {Listed(silent, MostSpecimensNamed)}.";
        return $"Kept out{where}: at least {Blocked(shielding.FieldBlocked)} of the field, "
            + $"{Blocked(shielding.PowerBlocked)} of the power{by}.{others}";
    }

    // What is left of 1 V/m tells what is kept out of any field.
    private static ImmutableArray<ResidualField> Kept(AnalysisResult result) =>
        ResidualField.Of(new FieldThreat(1, null), new CurvesAndBands(result.Curves, result.Bands), result.Findings,
            result.Verdict.Trust);

    private static IReadOnlyList<string> KeptRow(ResidualField kept) => kept.Shielding is { } shielding
        ? [SpecimenLabel(kept.Name), Bound(shielding), $"at least {Blocked(shielding.FieldBlocked)}",
            $"at least {Blocked(shielding.PowerBlocked)}"]
        : [SpecimenLabel(kept.Name), PulseWords.NoClaim, FieldWords.FieldSilenceBecause(kept.Silence), Nothing];

    private static IEnumerable<string> NeededInBrief(AnalysisResult result)
    {
        ImmutableArray<NeededShielding> needed = result.Needed;
        if (needed.IsEmpty)
        {
            yield break;
        }

        NeededShielding least = needed.MinBy(n => n.ShownCount)!;
        int points = result.Campaign.Grid.Count;
        string where = least.ShownCount == points
            ? $"shown at every measured frequency, for {(needed.Length == 1 ? SpecimenLabel(least.Name) : "every specimen")}"
            : least.ShownCount == 0 ? $"shown at no frequency for {SpecimenLabel(least.Name)}"
            : $"for {SpecimenLabel(least.Name)} shown at {Plain(least.ShownCount)} of {Plain(points)} frequencies, each by "
                + $"itself: {Listed([.. least.Shown.Select(Band)], 2)}";
        yield return $"Needed for {FieldWords.FieldStrength(result.Plan.Field!.TolerableVoltsPerMetre!.Value)}: SE "
            + $"{Ratio(needed[0].Needed.Value)}; {where}.";
    }

    private static IEnumerable<string> NeededInFull(AnalysisResult result) => result.Needed.Select(n =>
        $"  {SpecimenLabel(n.Name)}: {Ratio(n.Needed.Value)} "
        + $"{(n.Shown.IsEmpty ? "shown nowhere" : $"shown from {string.Join(", ", n.Shown.Select(Band))}")}"
        + $" ({Plain(n.ShownCount)} of {Plain(result.Campaign.Grid.Count)} frequencies, each by itself).");

    private static int Table(AnalysisResult result, ScreenLines screen, int beside)
    {
        OutsideBand[] columns = [result.Plan.Pulse.Outside, .. Enum.GetValues<OutsideBand>()
            .Where(o => o != result.Plan.Pulse.Outside)];
        string[] heads =
            ["Specimen", .. columns.Select((o, i) => PulseWords.OutsideWord(o) + (i == 0 ? " (asked)" : string.Empty))];
        string more = result.Pulses.Length > 1 ? "; most first" : string.Empty;
        for (int rows = Math.Min(MostPulsesOnScreen, result.Pulses.Length); rows > 0; rows--)
        {
            IEnumerable<IReadOnlyList<string>> shown = PulseWords.PulsesByPeak(result).Take(rows)
                .Select(p => (IReadOnlyList<string>)[
                    PlainText.Short(p.Name.ToString(), LongestSpecimen),
                    .. columns.Select(o => PulseWords.PeakLeft(p.Under(o)))]);
            if (screen.TryAdd([$"Peak left ({Level(result.Plan.Confidence)}{more}), by the shielding taken outside the band:",
                .. TextTable.Of(heads, shown)], rows > 1 ? beside : 0))
            {
                return rows;
            }
        }

        return 0;
    }

    // The interval rests on a phase that nobody measured; the bound does not.
    private static IEnumerable<string> AnyPhase(AnalysisResult result)
    {
        ResidualPulse[] told = [.. result.Pulses.Where(p => p.Silence is null)];
        if (told.Length == 0)
        {
            string[] why = [.. result.Pulses.Select(p => p.Silence).OfType<FieldSilence>().Distinct()
                .Select(PulseWords.PulseSilenceBecause)];
            yield return $"No claim: {string.Join("; ", why)}.";
            yield break;
        }

        IEnumerable<string> bounds = Enum.GetValues<OutsideBand>().Select(o => told.All(p => p.Under(o)!.PeakAtMost is not null)
            ? $"{PulseWords.OutsideWord(o)} at most {FieldWords.FieldLeft(told.Max(p => p.Under(o)!.PeakAtMost!.Value))}"
                : $"{PulseWords.OutsideWord(o)} {PulseWords.NoClaim}");
        yield return $"Intervals suppose minimum phase. For any phase and specimen: {string.Join("; ", bounds)}.";
    }
}
