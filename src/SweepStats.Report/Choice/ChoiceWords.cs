using SweepStats.Choice;
using SweepStats.Report.Answer;
using SweepStats.Report.Findings;
using SweepStats.Report.Specimens;
using SweepStats.Report.Text;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedFrequency;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Choice;

/// <summary>Which specimen is best, as far as it can be told.</summary>
public static class ChoiceWords
{
    /// <summary>Said where there are no two candidates.</summary>
    public const string NoChoice = "There is nothing to choose from: that takes two specimens.";

    /// <summary>Said where there are no two candidates: the yardstick is none.</summary>
    public static string NothingToChoose(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Plan.Choice.Yardstick is null ? NoChoice
            : "There is nothing to choose from: that takes two specimens beside the yardstick.";
    }

    internal const string OfTheseSpecimens = "The comparison is of these specimens. Whether other specimens of their lots are "
        + "as good is another question, which lots with several specimens answer.";

    /// <summary>Why no winner is named, and what to do; null where one may be.</summary>
    internal static string? NoWinner(SpecimenChoice choice)
    {
        if (choice.MayRank)
        {
            return null;
        }

        if (!choice.SettleFirst.IsEmpty)
        {
            return $"Settle first what 'sweepstats check' tells: {Listed(
                [.. choice.SettleFirst.Select(CheckWords.InPassing)], MostReasons)}. Until then no winner is named.";
        }

        string who = choice.ByPlacement ? $"{Listed([.. choice.NeverPutBack.Select(SpecimenLabel)], MostSpecimensNamed)} "
            + $"{(choice.NeverPutBack.Length == 1 ? "is" : "are")} not known"
            : "no specimen is known";
        return $"No winner is named: {who} to have been taken off and put back, so these differences may be those of placing. "
            + "Take each off and put it back twice and more, and name the placements.";
    }

    internal const int MostRows = 60;

    // More of them are a list that nobody reads.
    private const int MostReasons = 2;

    /// <summary>The ranking on the console: the answer, then a table a band.</summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> ChoiceText(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        List<string> lines = [PlainText.Of(result.Title), VerdictWords.HeadlineWithReason(result)];
        if (result.Choice is not { } choice)
        {
            return [.. lines, NothingToChoose(result)];
        }

        foreach (BandRanking band in choice.Bands)
        {
            lines.Add(string.Empty);
            lines.Add(RankingHeading(band));
            lines.AddRange(ChoiceAnswer(result, band));
            lines.AddRange(
                TextTable.Of(RankingWords.RankingColumns(result, band), RankingWords.RankingRows(result, band).Take(MostRows)));
            if (band.Ranking.Length > MostRows)
            {
                lines.Add($"  {Plain(band.Ranking.Length - MostRows)} more: --format json, or choice.csv of a report.");
            }
        }

        lines.Add(string.Empty);
        lines.AddRange(RankingWords.ChoiceRemarks(result));
        return lines;
    }

    internal static string RankingHeading(BandRanking band)
    {
        string[] left =
        [
            .. band.CappedLeftOut > band.OverloadedLeftOut
                ? [$"{Plain(band.CappedLeftOut - band.OverloadedLeftOut)} where some specimen is known from below only"]
                : Array.Empty<string>(),
            .. band.OverloadedLeftOut > 0 ? [$"{Plain(band.OverloadedLeftOut)} where the receiver was overloaded"]
                : Array.Empty<string>(),
            .. band.LeftOut > 0
                ? [$"{Plain(band.LeftOut)} where something else transmits or the reference hardly rises over the floor"]
                : Array.Empty<string>(),
        ];
        string without = left.Length > 0 ? $"; left out for all: {string.Join(", ", left)}" : string.Empty;
        return $"{(band.Name is { } name ? PlainText.Of(name) : "Whole band")}, {Band(band.Band)}, compared at "
            + $"{Count(band.PointCount, "frequency")}{without}";
    }

    /// <summary>What the ranking of a band comes to.</summary>
    internal static IEnumerable<string> ChoiceAnswer(AnalysisResult result, BandRanking band)
    {
        RankedSpecimen[] first = [.. band.Ranking.Where(r => r.Group == 1)];
        int compared = band.Ranking.Count(r => r.Group is not null);
        string? none = band.PointCount == 0 ? "No frequency of this band can be compared."
            : first.Length == 0 && result.Choice!.SettleFirst.IsEmpty ? NothingToldApart(result)
            : NoWinner(result.Choice!);
        yield return none ?? Best(result, first, band, compared);
        if (none is null && band.GroupCount > 1)
        {
            yield return $"{Count(compared, "specimen")} make {Count(band.GroupCount, "group")}: within a group the best "
                + "cannot be told.";
        }

        RankedSpecimen[] open = [.. first.Where(r => r.Open && result.Choice!.MayRank)];
        if (open.Length > 0)
        {
            string stays = open.Length == 1 ? "it stays" : "they stay";
            string shields = open.Length == 1 ? "shields" : "shield";
            yield return $"How much {Names(open)} {shields} is known from below only over much of the band: "
                + $"{stays} among the best until {BoundCauses.Of(result.Curves).Tells}.";
        }
    }

    private static string Best(AnalysisResult result, RankedSpecimen[] first, BandRanking band, int compared)
    {
        string level = Level(result.Plan.Confidence);
        return (first.Length, compared) switch
        {
            (1, 1) => $"Only {SpecimenLabel(first[0].Name)} can be compared.",
            (1, _) when Doubt(result, first[0]) is { } doubt => $"{ComparedOnly(band, compared)}{SpecimenLabel(first[0].Name)} "
                + $"reads best ({level}), but {doubt} before you choose it.",
            (1, _) => $"{ComparedOnly(band, compared)}{SpecimenLabel(first[0].Name)} shields best ({level}).",
            var (some, all) when some == all =>
                $"{ComparedOnly(band, compared)}None of {Count(all, "specimen")} can be told from the best.",
            _ => $"{ComparedOnly(band, compared)}{Plain(first.Length)} of {Count(compared, "specimen")} cannot be "
                + $"told from the best ({level}): {Names(first)}.",
        };
    }

    // What misleads is settled first: nobody is ranked then.
    private static string? Doubt(AnalysisResult result, RankedSpecimen winner)
    {
        bool Told(string code) => result.Findings.Any(f => f.Code == code && !f.IsOfAll && f.Concerns(winner.Name));
        return Told("nothing-heard") ? "nothing is heard behind it, as with the source off: open it once"
            : Told("odd-sweep") ? "a sweep of it is unlike those that repeat it: settle that"
            : Told("odd-specimen") ? "far better than the rest of its lot, as with a loose cable: sweep it once more" : null;
    }

    // Who is left out stands before who is best.
    private static string ComparedOnly(BandRanking band, int compared) => compared == band.Ranking.Length ? string.Empty
        : $"{Count(band.Ranking.Length - compared, "specimen")} cannot be compared. ";

    // Bounds repeat without scattering: three sweeps of a bound show no chance either.
    internal static string NothingToldApart(AnalysisResult result) =>
        $"{(result.Campaign.Covered.Any(c => c.Block.SweepCount > 1) ? "Only bounds are known, and bounds do not scatter"
            : "No specimen was swept twice")}, "
            + "so how far two specimens differ by chance cannot be told: the order is that of the values alone.";

    private static string Names(RankedSpecimen[] specimens) =>
        Listed([.. specimens.Select(s => SpecimenLabel(s.Name))], MostSpecimensNamed);
}
