using System.Collections.Immutable;
using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Lots;

/// <summary>Compares the lots of several campaigns, each with its own reference and floor.</summary>
/// <remarks>
/// Within a campaign the errors of reference and floor are those of all lots and drop out of a comparison; between campaigns they do not, and stand in the error of the
/// difference together with what both campaigns state. Stated errors that are the same in both (one receiver, one cable) are counted all the same, which is careful.
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
        double[] all = LogWeights.Of(grid);
        double[] weights = [.. all.Select((w, f) => Array.Exists(specimens, p => Array.Exists(p.Bounds, b => b[f])) ? 0 : w)];
        double share = weights.Sum();
        double[] mean = LogWeights.Whole(weights);
        List<Entry> lots = [.. specimens.SelectMany((p, c) => p.Lots(mean, all).Select(l => new Entry(
            c, new HistoryLot(campaigns[c].Label, LotFigures.Of(l.Lot, share > 0 ? l.Means : [.. l.Means.Select(_ => double.NaN)], l.PlainMean, question)), l.Means)))];
        TimedSpecimen[] timed = share > 0 ? TimedSpecimen.InOrder([.. specimens.SelectMany(p => p.Specimens(mean))]) : [];
        return new LotHistory
        {
            Question = question,
            Band = grid.Band,
            PointCount = grid.Count,
            ClearShare = share,
            Lots = [.. lots.Select(l => l.Lot)],
            Specimens = [.. timed.Select(t => new SpecimenMean(new SpecimenName(t.Lot, t.Specimen), t.MeanDb))],
            Pairs = share > 0 ? Pairs(lots, [.. specimens.Select(p => p.Shared(mean))], question) : [],
            OverTime = [.. ControlChart.OfLots(timed), .. ControlChart.OfSpecimens(timed)],
        };
    }

    /// <summary>The band within which all campaigns were measured; null where there is none.</summary>
    public static FrequencyBand? SharedBand(IReadOnlyList<CampaignLots> campaigns) => Grid(campaigns)?.Band;

    private static FrequencyGrid? Grid(IReadOnlyList<CampaignLots> campaigns)
    {
        double low = campaigns.Max(c => c.Campaign.Grid.Hertz[0]), high = campaigns.Min(c => c.Campaign.Grid.Hertz[^1]);
        double[][] shared = [.. campaigns.Select(c => c.Campaign.Grid.Hertz.ToArray().Where(f => f >= low && f <= high).ToArray())];
        double[] coarsest = shared.MinBy(s => s.Length)!;
        return coarsest.Length == 0 ? null : new FrequencyGrid([.. coarsest]);
    }

    private static ImmutableArray<HistoryPair> Pairs(List<Entry> lots, Contribution[]?[] shared, LotQuestion question)
    {
        List<HistoryPair> pairs = [];
        for (int a = 0; a < lots.Count; a++)
        {
            for (int b = a + 1; b < lots.Count; b++)
            {
                if (lots[a].Means.Length > 1 && lots[b].Means.Length > 1)
                {
                    pairs.Add(new HistoryPair(lots[a].Lot, lots[b].Lot, Tested(lots[a], lots[b], shared, question.MarginDb), null));
                }
            }
        }

        int[] known = [.. Enumerable.Range(0, pairs.Count).Where(i => pairs[i].Tested is not null)];
        double[] adjusted = Holm.Adjusted([.. known.Select(i => pairs[i].Tested!.ProbabilityAlike)]);
        for (int i = 0; i < known.Length; i++)
        {
            pairs[known[i]] = pairs[known[i]] with { Adjusted = adjusted[i] };
        }

        return [.. pairs];
    }

    private static Equivalence? Tested(Entry first, Entry second, Contribution[]?[] shared, double margin)
    {
        List<Contribution> parts = [Own(first), Own(second)];
        if (first.Campaign != second.Campaign)
        {
            if (shared[first.Campaign] is not { } one || shared[second.Campaign] is not { } other)
            {
                return null;
            }

            parts.AddRange([.. one, .. other]);
        }

        double error = WelchSatterthwaite.Combined([.. parts]);
        return error > 0
            ? new Equivalence(first.Lot.Figures.MeanDb - second.Lot.Figures.MeanDb, error, WelchSatterthwaite.DegreesOfFreedom([.. parts]), margin)
            : null;
    }

    private static Contribution Own(Entry lot) => new(Sample.StandardDeviation(lot.Means) / Math.Sqrt(lot.Means.Length), lot.Means.Length - 1);

    private sealed record Entry(int Campaign, HistoryLot Lot, double[] Means);
}
