using SweepStats.Choice;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Files.Results;

/// <summary>
/// choice.csv: the candidates of the whole band by what can be claimed of them, then of each named one; the yardstick last.
/// </summary>
public static class ChoiceCsv
{
    /// <summary>Name in the report folder.</summary>
    public const string FileName = "choice.csv";

    /// <summary>
    /// First line, before the user's own columns. Band is empty for the whole analysed one; rank is empty for the yardstick, and
    /// rank and group are where nobody may be ranked: not_ranked_because then says "never-put-back", or names the findings to
    /// settle first, under which probabilities and dominated_by are empty too; the two limits of the probability of being the
    /// best differ
    /// where some candidate is known from below only. Members of a group cannot be told from the best that no earlier group
    /// holds. Confidence is the level of the groups and of the intervals, which are two-sided (a single limit is the end of one
    /// whose other end is open), and the one-sided level of <c>at_least_db</c>.
    /// </summary>
    public const string Header =
        "band,start_hz,stop_hz,points,rank,lot,specimen,group,mean_db,mean_low_db,mean_high_db,at_least_db,capped_points,"
        + "probability_best_low,probability_best_high,"
        + "below_yardstick_db,below_yardstick_low_db,below_yardstick_high_db,dominated_by,confidence,not_ranked_because";

    /// <summary>Writes the table; only its first line where there are no two candidates.</summary>
    public static void Write(AnalysisResult result, Stream to)
    {
        ArgumentNullException.ThrowIfNull(result);
        string[] own = [.. result.Plan.Choice.Columns];
        using var rows = new CsvRows(to, Header, own);
        foreach (BandRanking band in result.Choice?.Bands ?? [])
        {
            var ranked = new RankedBand(result.Choice!, band, result.Plan.Confidence, own);
            foreach (RankedSpecimen specimen in band.Ranking)
            {
                Row(rows, ranked, specimen, result.Choice!.MayRank ? specimen.Rank : null);
            }

            if (band.Yardstick is { } yardstick)
            {
                Row(rows, ranked, yardstick, null);
            }
        }
    }

    private static void Row(CsvRows rows, RankedBand of, RankedSpecimen specimen, int? rank)
    {
        rows.Text(of.Band.Name).Band(of.Band.Band).Count(of.Band.PointCount).Count(rank)
            .Text(specimen.Name.Lot).Text(specimen.Name.Specimen).Count(of.Choice.MayRank ? specimen.Group : null);
        rows.Figure(specimen.MeanDb).Level(specimen.AtLeast?.Value).Count(specimen.CappedCount)
            .Probability(specimen.ProbabilityBest?.Low).Probability(specimen.ProbabilityBest?.High)
            .Figure(specimen.BelowYardstickDb);
        rows.Text(of.Choice.Dominated.Where(d => d.Name == specimen.Name).Select(d => d.By.ToString()).FirstOrDefault())
            .Exact(of.Level.Level).Text(string.Join(' ', of.Choice.NotRankedBecause));
        Own(rows, of, specimen);
        rows.End();
    }

    // As typed: a number that the user wrote is no text that a spreadsheet could take for a formula.
    private static void Own(CsvRows rows, RankedBand of, RankedSpecimen specimen)
    {
        foreach (string column in of.Own)
        {
            SpecimenProperty? property =
                of.Choice.Properties.FirstOrDefault(p => p.Specimen == specimen.Name && p.Name == column);
            _ = property?.Number is null ? rows.Text(property?.Text) : rows.Cell(property.Text);
        }
    }

    /// <summary>What the rows of a band share: the whole answer, its level, and the user's own columns.</summary>
    private sealed record RankedBand(SpecimenChoice Choice, BandRanking Band, Confidence Level, string[] Own);
}
