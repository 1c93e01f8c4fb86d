using SweepStats.Lots;
using SweepStats.Report.Lots;
using SweepStats.Report.Text;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.History;

/// <summary>Whether lots of several campaigns are alike: the answer.</summary>
internal static class HistoryAnswerWords
{
    /// <summary>Do lots differ, which, where and by how much; then what was left out of the comparison.</summary>
    internal static IEnumerable<string> HistoryAnswer(LotHistory history, IReadOnlyList<AnalysisResult> campaigns)
    {
        string[] faulty = [.. history.Campaigns.Zip(campaigns).Where(c => c.Second.Verdict.Trust == Verdicts.Trust.Untrustworthy)
            .Select(c => PlainText.Short(c.First, LongestSpecimen))];
        return faulty.Length > 0
            ? [$"Mend the faults of {Listed(faulty, MostSpecimensNamed)} first: until then whether the lots differ cannot be "
                + "told. The figures below are at face value only."]
            : HistoryAnswer(history);
    }

    private static IEnumerable<string> HistoryAnswer(LotHistory history)
    {
        HistoryPair[] known = [.. history.Pairs.Where(p => p.Adjusted is not null)];
        if (known.Length == 0)
        {
            return [Untold(history)];
        }

        string[] told = [.. DifferingPairs(history).SelectMany(p => Told(history, p))];
        return
        [
            HistoryHeadline(history, known), .. told.Take(LotAnswerWords.MostStretches),
            .. More(told.Length - LotAnswerWords.MostStretches), .. LeftOutOfPairs(history),
        ];
    }

    /// <summary>Lots of the same name in two campaigns first, then other lots of two campaigns, then those of one.</summary>
    internal static IEnumerable<HistoryPair> ByInterest(IEnumerable<HistoryPair> pairs) =>
        pairs.OrderBy(p => p.IsWithinACampaign ? 2 : p.First.Figures.Lot == p.Second.Figures.Lot ? 0 : 1);

    private static IEnumerable<HistoryPair> DifferingPairs(LotHistory history) =>
        ByInterest(history.Pairs.Where(history.Differ)
            .OrderByDescending(p => Stretches(history, p).FirstOrDefault()?.Weight ?? 0));

    private static HistoryStretch[] Stretches(LotHistory history, HistoryPair pair)
    {
        HistoryStretch[] all = [.. history.Stretches.Where(s => s.First == pair.First && s.Second == pair.Second)];
        return [.. all.Where(s => s.Weight >= LotAnswerWords.SlightStretch * all[0].Weight)];
    }

    private static string[] More(int differences) =>
        differences > 0
            ? [$"There is more: {Count(differences, "difference")} like these, in lots-by-frequency.csv and lot-pairs.csv of "
                + "the report."] : [];

    private static string Untold(LotHistory history)
    {
        bool hidden = history.Pairs.Any() && history.Pairs.All(p => p.Points.All(f => f.Hidden));
        return "Whether the lots differ cannot be told: "
            + (hidden ? "too much is known from below only."
                : "that takes two specimens a lot whose readings differ, and a reference that is swept twice in each campaign.");
    }

    private static string HistoryHeadline(LotHistory history, HistoryPair[] known)
    {
        HistoryPair[] differing = [.. known.Where(history.Differ)];
        string of = known.Length == 1 ? "one pair" : $"{Plain(known.Length)} pairs together";
        if (differing.Length == 0)
        {
            string named = history.Bands.IsEmpty ? string.Empty : ", in named bands";
            return $"No difference between the lots shows, in the mean over the band{named} or at single frequencies "
                + $"({LotAnswerWords.Chance(known.Min(p => p.Adjusted!.Value))}, for {of}). That does not prove them alike.";
        }

        string chance = LotAnswerWords.Chance(differing.Min(p => p.Adjusted!.Value));
        string differ = differing.Length == 1 ? "differs" : "differ";
        return known.Length == 1 ? $"The two lots differ ({chance})."
            : $"{(differing.Length == 1 ? "One pair" : Plain(differing.Length))} of {Count(known.Length, "pair")} of lots "
                + $"{differ} ({chance}).";
    }

    internal static string[] Told(LotHistory history, HistoryPair pair)
    {
        string[] where = [.. Stretches(history, pair).Select(s => $"{Shields(pair, s.ApartDb)} {Where(s)}.")];
        return where.Length > 0 ? where : [$"{InTheMean(history, pair)}."];
    }

    private static string Shields(HistoryPair pair, double firstLessSecond) =>
        $"{Named(pair.Second)} shields about {LotAnswerWords.Apart(-firstLessSecond)} than {Named(pair.First)}";

    private static string Where(HistoryStretch stretch)
    {
        string where = stretch.Band.Start == stretch.Band.Stop ? $"at {Frequency(stretch.Band.Start)}"
            : $"from {Band(stretch.Band)}";
        return stretch.Hidden == 0 ? where : $"{where} ({Count(stretch.Hidden, "frequency")} in it left out)";
    }

    // No single frequency tells it: what does is the whole band, or a named one.
    private static string InTheMean(LotHistory history, HistoryPair pair)
    {
        int place = history.Pairs.IndexOf(pair);
        (HistoryBand Band, HistoryPair Pair)[] bands =
            [.. history.Bands.Select(b => (b, b.Pairs[place])).Where(b => b.Item2.Tested is not null)];
        (HistoryBand Band, HistoryPair Pair)? surest = bands.Length == 0 ? null
            : bands.MinBy(b => b.Pair.Tested!.ProbabilityAlike);
        return pair.Tested is { } whole && !(surest?.Pair.Tested!.ProbabilityAlike < whole.ProbabilityAlike)
            ? $"{Shields(pair, whole.Difference)} on average over the band"
            : $"{Shields(pair, surest!.Value.Pair.Tested!.Difference)} on average over "
                + $"{HistoryBandWords.HistoryBandName(surest.Value.Band)}";
    }

    // What is hidden is no sign of lots that are alike.
    private static IEnumerable<string> LeftOutOfPairs(LotHistory history)
    {
        HistoryPair[] hidden =
            [.. HistoryWords.PairsAsked(history).Where(p => p.Adjusted is not null && p.Points.Any(f => f.Hidden))];
        if (hidden.Length > 0)
        {
            yield return HiddenPairs(hidden);
        }

        HistoryPair[] unknown = [.. history.Pairs.Where(p => p.Adjusted is null)];
        if (unknown.Length > 0)
        {
            string why = unknown.Any(p => p.Points.Any(f => !f.Hidden))
                ? "between campaigns that takes a reference which is swept twice in each" : "too much is known from below only";
            yield return $"{Count(unknown.Length, "more pair")} cannot be told: {why}.";
        }
    }

    private static string HiddenPairs(HistoryPair[] hidden)
    {
        string more = hidden.Length > LotAnswerWords.MostStretches
            ? $", and {Count(hidden.Length - LotAnswerWords.MostStretches, "more pair")}" : string.Empty;
        string[] named = [.. hidden.Take(LotAnswerWords.MostStretches).Select(p =>
            $"{Named(p.First)} and {Named(p.Second)} at {Plain(p.Points.Count(f => f.Hidden))} of "
                + $"{Count(p.Points.Length, "frequency")}")];
        return $"Not compared, because a specimen is known from below only: {string.Join("; ", named)}{more}.";
    }

    internal static string Frequencies(HistoryPair pair, LotHistory history)
    {
        int compared = pair.Points.Count(f => f.Probability is not null);
        return compared > 0 ? $"{Plain(pair.Points.Count(f => history.DifferAt(pair, f)))} of {Plain(compared)}" : Nothing;
    }

    internal static string Named(HistoryLot lot) =>
        $"{PlainText.Short(lot.Campaign, LongestSpecimen)}: {PlainText.Short(lot.Figures.Lot, LongestSpecimen)}";
}
