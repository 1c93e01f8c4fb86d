using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Figures of lots from the means of their specimens.</summary>
internal static class LotFigures
{
    /// <summary>Figures with the errors that all specimens share; null where these are not known.</summary>
    public static LotSummary Of(LotMeans lot, Contribution[]? shared, LotQuestion question)
    {
        double[] means = lot.Means;
        double mean = Sample.Mean(means), level = question.Confidence.Level;
        bool known = double.IsFinite(mean), repeated = means.Length > 1 && known;
        double? Reach(double quantile) => shared is null ? null : SharedErrors.Reach(shared, quantile);
        double? own = repeated ? SharedErrors.Reach([Error(means)], question.Confidence.TwoSidedQuantile) : null;
        double? whole = Reach(question.Confidence.TwoSidedQuantile) is { } common && own is { } alone
            ? Math.Sqrt((alone * alone) + (common * common)) : null;
        ToleranceBound? promise = repeated ? ToleranceLimit.Lower(means, question.Share, level) : null;
        int rank = known ? ToleranceLimit.RankWithoutDistribution(means.Length, question.Share, level) : 0;
        return new LotSummary
        {
            Lot = lot.Lot,
            Specimens = means.Length,
            MeanDb = mean,
            MeanIntervalDb = Around(mean, whole),
            BetweenLotsIntervalDb = Around(mean, own),
            ToleranceLimitDb = Reach(level) is { } below ? promise?.Less(below) : null,
            BetweenLotsLimitDb = promise?.Limit,
            RankLimitDb = rank > 0 && Reach(level) is { } off ? means.Order().ElementAt(rank - 1) - off : null,
            PlainMeanDb = lot.PlainMean,
        };
    }

    private static Contribution Error(double[] means) =>
        new(Sample.StandardDeviation(means) / Math.Sqrt(means.Length), means.Length - 1);

    private static Interval? Around(double mean, double? reach) =>
        reach is { } half ? new Interval(mean - half, mean + half) : null;

    /// <summary>Every two lots of two specimens or more; two lots without any scatter cannot be compared: no pair.</summary>
    public static IEnumerable<LotPair> Pairs(ImmutableArray<string> lots, double[][] means, double margin)
    {
        for (int a = 0; a < lots.Length; a++)
        {
            for (int b = a + 1; b < lots.Length; b++)
            {
                if (means[a].Length > 1 && means[b].Length > 1
                    && Sample.StandardDeviation(means[a]) + Sample.StandardDeviation(means[b]) > 0)
                {
                    yield return new LotPair(lots[a], lots[b], Equivalence.Of(means[a], means[b], margin));
                }
            }
        }
    }
}
