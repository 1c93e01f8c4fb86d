using SweepStats.Bands;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>
/// The means of lots of several campaigns over the part of a band that is clear for every specimen of every campaign.
/// </summary>
internal sealed class HistoryPart
{
    private readonly Contribution[]?[] _shared;
    private readonly double _marginDb;

    /// <param name="campaigns">Their specimens.</param>
    /// <param name="all">Weights of the frequencies of the band, which sum to 1.</param>
    /// <param name="question">What is asked.</param>
    public HistoryPart(IReadOnlyList<CampaignSpecimens> campaigns, double[] all, LotQuestion question)
    {
        double[] clear = [.. all.Select((w, f) => campaigns.Any(c => Array.Exists(c.Bounds, b => b[f])) ? 0 : w)];
        (ClearShare, Weights, _marginDb) = (clear.Sum(), LogWeights.Whole(clear), question.MarginDb);
        _shared = [.. campaigns.Select(c => ClearShare > 0 ? c.Shared(Weights) : null)];
        Lots = [.. campaigns.SelectMany((c, i) => c.Lots(Weights, all)
            .Select(l => new HistoryEntry(i, new HistoryLot(c.Label, Figures(l, _shared[i], question)), l.Means)))];
    }

    /// <summary>Share of the band that is clear.</summary>
    public double ClearShare { get; }

    /// <summary>Weights of the clear part, which sum to 1; all 0 where none is.</summary>
    public double[] Weights { get; }

    /// <summary>All lots, campaign by campaign; their figures are not numbers where no part of the band is clear.</summary>
    public ImmutableArray<HistoryEntry> Lots { get; }

    /// <summary>Two lots; null where it cannot be told.</summary>
    public Equivalence? Tested(int first, int second)
    {
        (HistoryEntry one, HistoryEntry other) = (Lots[first], Lots[second]);
        if (ClearShare == 0 || (!one.IsOfTheSame(other) && (_shared[one.Campaign] is null || _shared[other.Campaign] is null)))
        {
            return null;
        }

        Contribution[] parts =
            [Own(one), Own(other), .. one.IsOfTheSame(other) ? [] : _shared[one.Campaign]!.Concat(_shared[other.Campaign]!)];
        double error = WelchSatterthwaite.Combined(parts), apart = one.Lot.Figures.MeanDb - other.Lot.Figures.MeanDb;
        return error > 0 ? new Equivalence(apart, error, WelchSatterthwaite.DegreesOfFreedom(parts), _marginDb) : null;
    }

    private static Contribution Own(HistoryEntry lot) =>
        new(Sample.StandardDeviation(lot.Means) / Math.Sqrt(lot.Means.Length), lot.Means.Length - 1);

    private LotSummary Figures(LotMeans lot, Contribution[]? shared, LotQuestion question) =>
        LotFigures.Of(ClearShare > 0 ? lot : lot with { Means = [.. lot.Means.Select(_ => double.NaN)] }, shared, question);
}
