using SweepStats.Choice;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Report;

/// <content>Which specimen is best, as far as it can be told.</content>
public static partial class Wording
{
    /// <summary>Said where there are no two candidates.</summary>
    public const string NoChoice = "There is nothing to choose from: that takes two specimens.";

    internal const string OfThesePieces = "The comparison is of these pieces. Whether other pieces of their lots are as good is another question, which lots with several specimens answer.";

    private const int MostRows = 60;

    /// <summary>The ranking on the console: the answer, then a table a band.</summary>
    /// <returns>Lines without line ends; nothing in them steers a terminal.</returns>
    public static IReadOnlyList<string> ChoiceText(AnalysisResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        List<string> lines = [PlainText.Of(result.Title), Headline(result)];
        if (result.Choice is not { } choice)
        {
            return [.. lines, NoChoice];
        }

        foreach (BandRanking band in choice.Bands)
        {
            lines.Add(string.Empty);
            lines.Add(RankingHeading(band));
            lines.AddRange(ChoiceAnswer(result, band));
            lines.AddRange(TextTable.Of(RankingColumns(result, band), RankingRows(result, band).Take(MostRows)));
            if (band.Ranking.Length > MostRows)
            {
                lines.Add($"  {Plain(band.Ranking.Length - MostRows)} more: --format json, or choice.csv of a report.");
            }
        }

        lines.Add(string.Empty);
        lines.AddRange(ChoiceRemarks(result));
        return lines;
    }

    internal static string RankingHeading(BandRanking band)
    {
        string[] left =
        [
            .. band.CappedLeftOut > 0 ? [$"{Plain(band.CappedLeftOut)} where the floor hides some specimen"] : Array.Empty<string>(),
            .. band.LeftOut > 0 ? [$"{Plain(band.LeftOut)} where something else transmits or the reference hardly rises over the floor"] : Array.Empty<string>(),
        ];
        string without = left.Length > 0 ? $"; left out for all: {string.Join(", ", left)}" : string.Empty;
        return $"{(band.Name is { } name ? PlainText.Of(name) : "Whole band")}, {Band(band.Band)}, compared at {Count(band.PointCount, "frequency")}{without}";
    }

    /// <summary>What the ranking of a band comes to.</summary>
    internal static IEnumerable<string> ChoiceAnswer(AnalysisResult result, BandRanking band)
    {
        RankedSpecimen[] first = [.. band.Ranking.Where(r => r.Group == 1)];
        int compared = band.Ranking.Count(r => r.Group is not null);
        if (first.Length == 0)
        {
            yield return "Nothing repeats, so how far two specimens differ by chance cannot be told: the order is that of the values alone.";
        }
        else
        {
            string level = Level(result.Plan.Confidence);
            yield return (first.Length, compared) switch
            {
                (1, 1) => $"Only {Piece(first[0].Name)} can be compared.",
                (1, _) => $"{Piece(first[0].Name)} shields best ({level}).",
                var (some, all) when some == all => $"None of the {Count(all, "specimen")} can be told from the best.",
                _ => $"{Plain(first.Length)} of {Count(compared, "specimen")} cannot be told from the best ({level}): {Names(first)}.",
            };
            if (band.GroupCount > 1)
            {
                yield return $"{Count(compared, "specimen")} make {Count(band.GroupCount, "group")}: members of a group cannot be told from the best that no earlier group holds.";
            }
        }

        RankedSpecimen[] open = [.. first.Where(r => r.Open)];
        if (open.Length > 0)
        {
            yield return $"The floor hides how much {Names(open)} {(open.Length == 1 ? "shields" : "shield")} over most of the band: {(open.Length == 1 ? "it stays" : "they stay")} among the best until more dynamic range tells.";
        }
    }

    internal static IReadOnlyList<string> RankingColumns(AnalysisResult result, BandRanking band) =>
    [
        "Rank", "Specimen", "Group", $"Mean over what is compared ({Level(result.Plan.Confidence)} interval)", "At every measured frequency", "Best with probability",
        .. band.Yardstick is { } yardstick ? [$"Below {PlainText.Short(yardstick.Name.ToString(), LongestPiece)}"] : Array.Empty<string>(),
        .. result.Plan.Choice.Columns.Select(PlainText.Of),
        "Remark",
    ];

    internal static IEnumerable<IReadOnlyList<string>> RankingRows(AnalysisResult result, BandRanking band)
    {
        foreach (RankedSpecimen specimen in band.Ranking)
        {
            yield return RankingRow(result, band, specimen, Plain(specimen.Rank));
        }

        if (band.Yardstick is { } yardstick)
        {
            yield return RankingRow(result, band, yardstick, "yardstick");
        }
    }

    internal static IEnumerable<string> ChoiceRemarks(AnalysisResult result)
    {
        if (result.Choice is not { } choice)
        {
            yield break;
        }

        yield return "Ranked by the lower limit of the mean, which can be claimed; compared by the means themselves, from which the errors of reference and stated errors, alike for all, drop out.";
        if (!choice.ByPlacement)
        {
            yield return "No placements are named: how well a specimen can be put back is not in the comparison.";
        }

        yield return OfThesePieces;
    }

    private static IReadOnlyList<string> RankingRow(AnalysisResult result, BandRanking band, RankedSpecimen specimen, string rank) =>
    [
        rank, PlainText.Short(specimen.Name.ToString(), LongestPiece), specimen.Group is { } group ? Plain(group) : Nothing,
        Figure(specimen.MeanDb), specimen.AtLeast is { } claim ? Bound(claim) : "no claim", BestProbability(specimen),
        .. band.Yardstick is null ? Array.Empty<string>() : [Below(specimen.BelowYardstickDb)],
        .. result.Plan.Choice.Columns.Select(column => Own(result.Choice!, specimen.Name, column)),
        Remark(result.Choice!, specimen),
    ];

    private static string Below(Bands.BandFigure? below) => below switch
    {
        null => Nothing,
        { Value: { } value, Low: { } low, High: { } high } => $"{Ratio(value)} ({Interval(low, high)})",
        { Low: { } low } => Bound(new Decibels(low)),
        { High: { } high } => $"≤ {HighTenths(high)} dB",
        _ => "cannot be told",
    };

    private static string Remark(SpecimenChoice choice, RankedSpecimen specimen)
    {
        string[] remarks =
        [
            .. choice.Dominated.Where(d => d.Name == specimen.Name).Select(d => $"{Piece(d.By)} is at least as good in everything"),
            .. specimen.CappedCount > 0 ? [$"capped at {Count(specimen.CappedCount, "frequency")}"] : Array.Empty<string>(),
        ];
        return string.Join("; ", remarks);
    }

    private static string Own(SpecimenChoice choice, SpecimenName name, string column) =>
        choice.Properties.FirstOrDefault(p => p.Specimen == name && p.Name == column) is { } property ? PlainText.Short(property.Text, LongestPiece) : Nothing;

    private static string Names(RankedSpecimen[] specimens) =>
        string.Join(", ", specimens.Take(MostPiecesNamed).Select(s => Piece(s.Name))) + (specimens.Length > MostPiecesNamed ? $" and {Plain(specimens.Length - MostPiecesNamed)} more" : string.Empty);
}
