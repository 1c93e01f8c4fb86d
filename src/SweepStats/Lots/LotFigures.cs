using System.Collections.Immutable;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Figures of lots from the means of their specimens.</summary>
internal static class LotFigures
{
    public static LotSummary Of(string lot, double[] means, double plain, LotQuestion question)
    {
        double mean = Sample.Mean(means);
        bool known = double.IsFinite(mean), repeated = means.Length > 1 && known;
        double deviation = repeated ? Sample.StandardDeviation(means) : 0;
        double reach = repeated ? StudentQuantile.Of(question.Confidence.TwoSidedQuantile).At(means.Length - 1) * deviation / Math.Sqrt(means.Length) : 0;
        int rank = known ? ToleranceLimit.RankWithoutDistribution(means.Length, question.Share, question.Confidence.Level) : 0;
        return new LotSummary
        {
            Lot = lot,
            Specimens = means.Length,
            MeanDb = mean,
            MeanIntervalDb = repeated ? new Interval(mean - reach, mean + reach) : null,
            ToleranceLimitDb = repeated ? mean - (ToleranceLimit.NormalFactor(means.Length, question.Share, question.Confidence.Level) * deviation) : null,
            RankLimitDb = rank > 0 ? means.Order().ElementAt(rank - 1) : null,
            PlainMeanDb = plain,
        };
    }

    public static IEnumerable<LotPair> Pairs(ImmutableArray<string> lots, double[][] means, double margin)
    {
        for (int a = 0; a < lots.Length; a++)
        {
            for (int b = a + 1; b < lots.Length; b++)
            {
                if (means[a].Length > 1 && means[b].Length > 1 && Sample.StandardDeviation(means[a]) + Sample.StandardDeviation(means[b]) > 0)
                {
                    yield return new LotPair(lots[a], lots[b], Equivalence.Of(means[a], means[b], margin));
                }
            }
        }
    }
}
