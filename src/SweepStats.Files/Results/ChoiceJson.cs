using System.Text.Json;
using SweepStats.Choice;
using SweepStats.Files.Summaries;
using SweepStats.Statistics;
using static SweepStats.Files.Results.ResultNumber;

namespace SweepStats.Files.Results;

/// <summary>Which specimen is best, as JSON; decibels unless the name says otherwise, null where there is no figure.</summary>
public static class ChoiceJson
{
    /// <summary>Writes the members of an object that is open.</summary>
    /// <param name="json">Where to.</param>
    /// <param name="choice">The ranking.</param>
    /// <param name="confidence">Level of its groups and intervals, and one-sided of what is claimed at every frequency.</param>
    public static void Write(Utf8JsonWriter json, SpecimenChoice choice, Confidence confidence)
    {
        ArgumentNullException.ThrowIfNull(json);
        ArgumentNullException.ThrowIfNull(choice);
        json.MembersOf(Of(choice, confidence), SummaryNames.Printed.SummaryChoice);
    }

    /// <summary>What is written.</summary>
    internal static SummaryChoice Of(SpecimenChoice choice, Confidence confidence) => new(
        confidence.Level, choice.ByPlacement ? "placements" : "sweeps", choice.NotRankedBecause,
        [.. choice.Bands.Select(band => Band(band, choice.MayRank))],
        [.. choice.Properties.Select(p => new SummaryProperty(p.Specimen.Lot, p.Specimen.Specimen, p.Name, p.Text))],
        [.. choice.Dominated.Select(d => new SummaryDominated(d.Name.ToString(), d.By.ToString()))]);

    // Where nobody may be ranked the order is no ranking.
    private static SummaryChoiceBand Band(BandRanking band, bool ranked) => new(
        band.Name, band.Band.Start.Value, band.Band.Stop.Value, band.PointCount, band.LeftOut, band.CappedLeftOut,
        [.. band.Ranking.Select(specimen => Candidate(specimen, ranked))],
        band.Yardstick is { } yardstick ? Candidate(yardstick, ranked) : null);

    private static SummaryCandidate Candidate(RankedSpecimen specimen, bool ranked) => new(
        specimen.Name.Lot, specimen.Name.Specimen,
        Rank: ranked && specimen.Rank > 0 ? specimen.Rank : null,
        Group: ranked ? specimen.Group : null,
        Estimate.Of(specimen.MeanDb), Finite(specimen.AtLeast?.Value), specimen.CappedCount, specimen.Open,
        ProbabilityBestLow: Finite(specimen.ProbabilityBest?.Low),
        ProbabilityBestHigh: Finite(specimen.ProbabilityBest?.High),
        Estimate.Of(specimen.BelowYardstickDb));
}
