using SweepStats.Lots;
using SweepStats.Quantities;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using SweepStats.Sweeps;
using SweepStats.Verdicts;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Lots;

/// <summary>Whether lots are alike: the answer.</summary>
internal static class LotAnswerWords
{
    internal const int MostStretches = 3;
    private const int SentencesInBrief = 3;

    // A stretch that weighs less than this part of the strongest is left to the table of frequencies.
    internal const double SlightStretch = 0.05;

    // A plain mean that shows less than this part of a difference hides it.
    private const double LittleOfIt = 0.25;

    /// <summary>Do lots differ, which, where, what plain means would say, and what they do not promise.</summary>
    internal static IEnumerable<string> LotsAnswer(AnalysisResult result)
    {
        LotComparison lots = result.Lots;
        yield return LotsHeadline(result, lots.Whole);
        if (result.Verdict.Trust == Trust.Untrustworthy)
        {
            yield break;
        }

        if (LotToTake(result) is { } best)
        {
            yield return best;
        }

        LotStretch[] told = Telling(lots);
        foreach (LotStretch stretch in told.Take(MostStretches))
        {
            yield return StandsOut(stretch, lots.Lots.Length, BoundCauses.Of(result.Curves).What);
        }

        if (told.Length > MostStretches)
        {
            yield return "There is more: column p_adjusted of lots-by-frequency.csv, which 'sweepstats run' writes.";
        }

        if (HiddenByPlainMeans(lots, told) is { } hidden)
        {
            yield return hidden;
        }

        foreach (string below in PromisedTooLittle(result))
        {
            yield return below;
        }

        if (result.Plan.Choice.Yardstick is { } yardstick && result.Curves.Length > lots.Whole.Specimens.Length)
        {
            yield return $"{SpecimenLabel(yardstick)} is the yardstick and in no lot.";
        }
    }

    /// <summary>The answer in three sentences, and which lots promise too little: that limits what may be claimed.</summary>
    internal static IEnumerable<string> LotsInBrief(AnalysisResult result)
    {
        string[] below = result.Verdict.Trust == Trust.Untrustworthy ? [] : [.. PromisedTooLittle(result)];
        string? best = LotToTake(result);
        return LotsAnswer(result).Where(sentence => sentence != best).Take(SentencesInBrief).Concat(below.Length < 2 ? below
            : [$"{Count(below.Length, "lot")} do not promise the requirement everywhere: “Lots” in the annex."]).Distinct();
    }

    /// <summary>
    /// Which lot to take for each band, or that none is shown to be better; null where nothing tells, or something was found that
    /// has to be settled first.
    /// </summary>
    internal static string? LotToTake(AnalysisResult result)
    {
        ImmutableArray<LotBand> told = result.MayPrefer ? result.Lots.Bands : [];
        if (told.All(b => b.Foremost.IsEmpty))
        {
            return null;
        }

        // What a band was named for comes before the whole of it.
        string[] answers = [.. told.Where(b => b.Name is not null).Concat(told.Where(b => b.Name is null))
            .Select(b => Foremost(b, told.Length > 1))];
        string level = Level(result.Lots.Question.Confidence) + (told.Length > 1 ? " each" : string.Empty);
        return $"Lot to take, by the mean where no specimen is hidden ({level}): "
            + $"{string.Join("; ", answers.Take(MostBandsNamed))}"
            + (answers.Length > MostBandsNamed ? $"; {Plain(answers.Length - MostBandsNamed)} more: lots.csv." : ".");
    }

    private static string Foremost(LotBand band, bool several)
    {
        string of = !several ? string.Empty : band.Name is { } name ? $"{PlainText.Of(name)}: " : "whole band: ";
        return of + (band.Foremost.IsEmpty ? "cannot be told"
            : band.Foremost.Length == band.Lots.Length ? "none shown better"
            : band.Foremost.Length > MostSpecimensNamed ? $"one of {Plain(band.Foremost.Length)}"
            : Either([.. band.Foremost.Select(PlainText.Of)]));
    }

    private static string Either(string[] lots) =>
        lots.Length == 1 ? lots[0] : $"{string.Join(", ", lots[..^1])} or {lots[^1]}";

    internal static string LotsHeadline(AnalysisResult result, LotBand band)
    {
        LotComparison lots = result.Lots;
        var causes = BoundCauses.Of(result.Curves);
        if (result.Verdict.Trust == Trust.Untrustworthy && lots.Lots.Length > 1)
        {
            return "Mend the faults first: until then whether the lots differ cannot be told. Figures of lots are at face "
                + "value only.";
        }

        if (band.Probability is not { } p)
        {
            return lots.Lots.Length < 2 ? "One lot only: there is nothing to compare it with."
                : lots.Whole.Lots.All(l => l.Specimens < 2)
                    ? "Whether the lots differ cannot be told: no lot has two specimens, so nothing shows how much specimens of "
                        + "one lot differ. Take two of each, better four; single specimens are compared by 'sweepstats choose'."
                : result.Floor is null
                ? "Whether the lots differ cannot be told: no floor is known, so all shielding is known from below only. "
                    + (UnreadFiles.Of(result.Campaign.Unread, SweepRole.Floor)?.Mend ?? "Take floor sweeps.")
                : causes.Any
                ? $"Whether the lots differ cannot be told: {causes.What} hides too many specimens. {causes.WouldTell}"
                : "Whether the lots differ cannot be told: the specimens of a lot read the same, so nothing shows how much "
                    + "they differ.";
        }

        return p > lots.Question.FalseAlarm
            ? $"No difference between the lots shows ({Chance(p)}). That does not prove them alike."
            : $"The lots differ ({Chance(p)})."
                + $"{(Telling(lots).Length == 0 && Farthest(band) is { } farthest ? " " + farthest : string.Empty)}";
    }

    /// <summary>A p-value with two digits: "p = 0.031", "p &lt; 0.0001".</summary>
    internal static string Chance(double p) => p < 1e-4 ? "p < 0.0001"
        : $"p = {Plain(Math.Min(1, double.Parse(p.ToString("E1", System.Globalization.CultureInfo.InvariantCulture),
            System.Globalization.CultureInfo.InvariantCulture)))}";

    // Where the floor hides which lot it is, a stretch says little beside one that tells.
    private static LotStretch[] Telling(LotComparison lots)
    {
        LotStretch[] told = lots.Stretches.Any(s => s.Lot is not null) ? [.. lots.Stretches.Where(s => s.Lot is not null)]
            : [.. lots.Stretches];
        return [.. told.Where(s => Weight(s) >= SlightStretch * Weight(told[0]))];
    }

    private static double Weight(LotStretch stretch) => stretch.Frequencies * Math.Abs(stretch.ApartDb);

    private static string StandsOut(LotStretch stretch, int lots, string hides)
    {
        string where = stretch.Band.Start == stretch.Band.Stop ? $"at {Frequency(stretch.Band.Start)}"
            : $"from {Band(stretch.Band)}";
        return stretch.Lot is { } lot
            ? $"Lot {PlainText.Of(lot)} shields about {Apart(stretch.ApartDb)} than the "
                + $"{(lots == 2 ? "other" : "mean of the others")} "
                + $"{where}{(stretch.AtLeast ? $", as much or more where {hides} hides a specimen" : string.Empty)}."
            : $"They differ {where}; {hides} hides by how much.";
    }

    internal static string Apart(double decibels) => $"{Ratio(Math.Abs(decibels))} {(decibels < 0 ? "less" : "more")}";

    private static string? Farthest(LotBand band)
    {
        if (band.ClearShare == 0 || band.Lots.Length < 2)
        {
            return null;
        }

        (LotSummary lot, double apart) =
            band.Lots.Select(l => (l, FromOthers(band, l.Lot, o => o.MeanDb))).MaxBy(l => Math.Abs(l.Item2));
        return band.Lots.Length == 2 ? $"On average lot {PlainText.Of(lot.Lot)} shields about {Apart(apart)} than the other."
            : $"Lot {PlainText.Of(lot.Lot)} lies farthest from the others: on average it shields about {Apart(apart)}.";
    }

    private static double FromOthers(LotBand band, string lot, Func<LotSummary, double> figure) =>
        band.Lots.Where(l => l.Lot == lot).Average(figure) - band.Lots.Where(l => l.Lot != lot).Average(figure);

    private static string? HiddenByPlainMeans(LotComparison lots, LotStretch[] told)
    {
        double[] shown = [.. told.Take(MostStretches).Where(s => s.Lot is not null)
            .Select(s => FromOthers(lots.Whole, s.Lot!, l => l.PlainMeanDb) / s.ApartDb)];
        return shown.Length == 0 || shown.Min() >= LittleOfIt || lots.Lots.Length > MostSpecimensNamed ? null
            : $"Plain means of all readings {(shown.Min() < 0 ? "hide it" : "show little of it")}: "
                + $"{string.Join(", ", lots.Whole.Lots.Select(l => $"{PlainText.Of(l.Lot)} {Ratio(l.PlainMeanDb)}"))}.";
    }

    // A lot whose every measured specimen meets the requirement may still promise less: specimens that were not measured lie
    // lower. Where the floor hides some specimen, a low limit says little of the lot.
    private static IEnumerable<string> PromisedTooLittle(AnalysisResult result)
    {
        if (result.Plan.Requirement is not { } requirement)
        {
            yield break;
        }

        for (int l = 0; l < result.Lots.Lots.Length; l++)
        {
            int lot = l;
            Hertz[] below =
                [.. result.Lots.Frequencies.Where(f => f.Lots[lot] is { Bound: false, AtMostPromisedDb: { } promised }
                    && requirement.At(f.At) is { } asked && promised < asked.Value).Select(f => f.At)];
            if (below.Length > 0)
            {
                string where = below.Length == 1 ? $"at {Frequency(below[0])}"
                    : $"at {Count(below.Length, "frequency")} from {Band(new FrequencyBand(below[0], below[^1]))}";
                yield return $"Lot {PlainText.Of(result.Lots.Lots[lot])} does not promise the requirement {where}: that "
                    + $"{LotChartWords.Share(result.Lots.Question)} of its specimens reach it is not shown there.";
            }
        }
    }
}
