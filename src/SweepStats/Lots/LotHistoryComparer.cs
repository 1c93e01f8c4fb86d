using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>Compares the lots of several campaigns, each with its own reference and floor.</summary>
/// <remarks>
/// Within a campaign the errors of reference and floor are those of all lots and drop out of a comparison; between campaigns they
/// do not, and stand in the error of the difference together with what both campaigns state; at each frequency
/// (<see cref="HistoryPoint"/>) as in the mean over the band. Two lots differ where the mean over the band, single frequencies or
/// named bands say so. Stated errors that are the same in both (one receiver, one cable) are counted all the same, which is
/// careful.
/// </remarks>
public static class LotHistoryComparer
{
    /// <summary>Compares.</summary>
    /// <param name="campaigns">Two and more, with labels of their own.</param>
    /// <param name="question">What is asked of the lots.</param>
    /// <exception cref="ArgumentException">Fewer than two campaigns, or no frequency that lies within all of them.</exception>
    public static LotHistory Of(IReadOnlyList<CampaignLots> campaigns, LotQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        FrequencyGrid grid = campaigns.Count > 1 && Grid(campaigns) is { } shared ? shared
            : throw new ArgumentException("Two campaigns and more are compared, and share a frequency.", nameof(campaigns));
        CampaignSpecimens[] specimens = [.. campaigns.Select(c => new CampaignSpecimens(c, grid))];
        var whole = new HistoryPart(specimens, LogWeights.Of(grid), question);
        var named = new CommonBands(campaigns, grid);
        HistoryPart[] parts = [.. named.All.Select(b => new HistoryPart(specimens, LogWeights.Within(grid, b.Band), question))];
        ImmutableArray<Hertz> frequencies = [.. Enumerable.Range(0, grid.Count).Select(f => grid[f])];
        var pairs = new HistoryPairs(whole, parts, [.. specimens.SelectMany(s => s.OverFrequency())]);
        TimedSpecimen[] timed = whole.ClearShare > 0
            ? TimedSpecimen.InOrder([.. specimens.SelectMany(p => p.Specimens(whole.Weights))]) : [];
        return new LotHistory
        {
            Question = question,
            Campaigns = [.. campaigns.Select(c => c.Label)],
            Band = grid.Band,
            Frequencies = frequencies,
            ClearShare = whole.ClearShare,
            Lots = [.. whole.Lots.Select(l => l.Lot)],
            Specimens = [.. timed.Select(t => new SpecimenMean(new SpecimenName(t.Lot, t.Specimen), t.MeanDb))],
            Pairs = pairs.Whole,
            // Single frequencies speak only where the pair does, so that one answer never contradicts the other.
            Stretches = [.. pairs.Whole.Where(p => p.Adjusted <= question.FalseAlarm)
                .SelectMany(p => HistoryStretch.Of(p, frequencies, question.FalseAlarm))],
            Bands = [.. parts.Select((part, b) => Band(named.All[b], frequencies, part, pairs.OfBand(b)))],
            BandsLeftOut = named.LeftOut,
            OverTime = [.. ControlChart.OfLots(timed), .. ControlChart.OfSpecimens(timed)],
        };
    }

    /// <summary>The band within which all campaigns were measured; null where there is none.</summary>
    public static FrequencyBand? SharedBand(IReadOnlyList<CampaignLots> campaigns) => Grid(campaigns)?.Band;

    private static FrequencyGrid? Grid(IReadOnlyList<CampaignLots> campaigns)
    {
        double low = campaigns.Max(c => c.Campaign.Grid.Hertz[0]), high = campaigns.Min(c => c.Campaign.Grid.Hertz[^1]);
        double[][] shared =
            [.. campaigns.Select(c => c.Campaign.Grid.Hertz.ToArray().Where(f => f >= low && f <= high).ToArray())];
        double[] coarsest = shared.MinBy(s => s.Length)!;
        return coarsest.Length == 0 ? null : new FrequencyGrid([.. coarsest]);
    }

    private static HistoryBand Band(NamedBand named, ImmutableArray<Hertz> frequencies, HistoryPart part,
        ImmutableArray<HistoryPair> pairs)
    {
        Hertz[] inside = [.. frequencies.Where(named.Band.Contains)];
        return new HistoryBand
        {
            Name = named.Name,
            Limits = named.Band,
            Band = new FrequencyBand(inside[0], inside[^1]),
            ClearShare = part.ClearShare,
            Lots = [.. part.Lots.Select(l => l.Lot)],
            Pairs = pairs,
        };
    }
}
