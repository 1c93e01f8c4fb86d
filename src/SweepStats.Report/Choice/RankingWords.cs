using SweepStats.Bands;
using SweepStats.Choice;
using SweepStats.Quantities;
using SweepStats.Report.Answer;
using SweepStats.Report.Text;
using SweepStats.Sweeps;
using static SweepStats.Report.Text.Printed;
using static SweepStats.Report.Text.PrintedLevel;
using static SweepStats.Report.Text.PrintedNames;

namespace SweepStats.Report.Choice;

/// <summary>The table of a ranking.</summary>
internal static class RankingWords
{
    // A scatter so much wider than the usual one keeps a specimen among better ones that it cannot be told from.
    private const double ScattersMore = 1.5;

    internal static IReadOnlyList<string> RankingColumns(AnalysisResult result, BandRanking band) =>
    [
        "Rank", "Specimen", "Group", "Remark", $"Mean over what is compared ({Level(result.Plan.Confidence)} interval)",
        "At every measured frequency", "Best with probability",
        .. band.Yardstick is { } yardstick ? [$"Against {PlainText.Short(yardstick.Name.ToString(), LongestSpecimen)}"]
            : Array.Empty<string>(), .. result.Plan.Choice.Columns.Select(PlainText.Of),
    ];

    internal static IEnumerable<IReadOnlyList<string>> RankingRows(AnalysisResult result, BandRanking band)
    {
        IReadOnlyList<string> names = ShortNames.Of([.. band.Ranking.Select(r => r.Name.ToString())], LongestSpecimen);
        foreach ((int place, RankedSpecimen specimen) in band.Ranking.Index())
        {
            yield return RankingRow(result, band, new(specimen, names[place]),
                ChoiceWords.NoWinner(result.Choice!) is null ? Plain(specimen.Rank) : Nothing);
        }

        if (band.Yardstick is { } yardstick)
        {
            yield return RankingRow(
                result, band, new(yardstick, PlainText.Short(yardstick.Name.ToString(), LongestSpecimen)), "yardstick");
        }
    }

    internal static IEnumerable<string> ChoiceRemarks(AnalysisResult result)
    {
        if (result.Choice is not { } choice)
        {
            yield break;
        }

        if (!choice.SettleFirst.IsEmpty)
        {
            yield return "The order of the table is no ranking.";
        }
        else if (choice.Bands.Any(b => b.GroupCount > 0))
        {
            yield return (ChoiceWords.NoWinner(choice) is null
                ? "Ranked by group, and within it by the lower limit of the mean, which can be claimed. "
                    : "The order of the table is no ranking. ")
                + "Compared by the means themselves: the errors of the reference and stated errors are alike for all and "
                + "drop out.";
        }

        if (!choice.Dominated.IsEmpty)
        {
            yield return "No better than another: it reads no more in any band, is in no earlier group, and no column that is "
                + "weighed speaks for it.";
        }

        yield return ChoiceWords.OfTheseSpecimens;
    }

    private static IReadOnlyList<string> RankingRow(AnalysisResult result, BandRanking band, NamedSpecimen of, string rank)
    {
        RankedSpecimen specimen = of.Specimen;
        return
        [
        rank, of.Name, specimen.Group is { } group && ChoiceWords.NoWinner(result.Choice!) is null ? Plain(group) : Nothing,
        Remark(result.Choice!, band, specimen), VerdictWords.Figure(specimen.MeanDb),
        specimen.AtLeast is { } claim ? Bound(claim) : "no claim",
        specimen.Rank == 0 ? Nothing : ChoiceChartWords.BestProbability(specimen),
        .. band.Yardstick is null ? Array.Empty<string>() : [Against(specimen.BelowYardstickDb)],
        .. result.Plan.Choice.Columns.Select(column => Own(result.Choice!, specimen.Name, column)),
        ];
    }

    private static string Against(BandFigure? below) => below switch
    {
        null => Nothing,
        { Value: < 0 and var value, Low: { } low, High: { } high } => $"{Ratio(-value)} more ({Interval(-high, -low)})",
        { Value: { } value, Low: { } low, High: { } high } => $"{Ratio(value)} less ({Interval(low, high)})",
        { Low: { } low } => $"{Bound(new Decibels(low))} less",
        { High: { } high } => $"≤ {HighTenths(high)} dB less",
        _ => "cannot be told",
    };

    private static string Remark(SpecimenChoice choice, BandRanking band, RankedSpecimen specimen)
    {
        double? usual = band.Ranking.Min(r => r.DeviationDb);
        string[] remarks =
        [
            .. choice.Dominated.Where(d => d.Name == specimen.Name).Select(d => $"no better than {SpecimenLabel(d.By)}"),
            .. specimen.DeviationDb > ScattersMore * usual ? [$"repeats scatter by {Small(specimen.DeviationDb.Value)}"]
                : Array.Empty<string>(),
            .. specimen.OverloadedCount > 0
                ? [$"overloaded at {Plain(specimen.OverloadedCount)} of "
                    + $"{Plain(band.PointCount + band.LeftOut + band.CappedLeftOut)}"] : Array.Empty<string>(),
            .. specimen.CappedCount > 0
                ? [$"capped at {Plain(specimen.CappedCount)} of {Plain(band.PointCount + band.LeftOut + band.CappedLeftOut)}"]
                : Array.Empty<string>(),
        ];
        return string.Join("; ", remarks);
    }

    private static string Own(SpecimenChoice choice, SpecimenName name, string column) =>
        choice.Properties.FirstOrDefault(p => p.Specimen == name && p.Name == column) is { } property
            ? PlainText.Short(property.Text, LongestSpecimen) : Nothing;
}
