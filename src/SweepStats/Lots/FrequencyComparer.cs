using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Compares lots at one frequency.</summary>
internal static class FrequencyComparer
{
    public static LotFrequency At(int f, LotSpecimens pieces, LotQuestion question)
    {
        double[] values = [.. pieces.Specimens.Select(s => s.Values[f])];
        bool[] bounds = [.. pieces.Specimens.Select(s => s.Bounds[f])];
        int capped = bounds.Count(b => b);
        bool readable = Array.TrueForAll(values, double.IsFinite);
        return new LotFrequency
        {
            At = pieces.Grid[f],
            Lots = [.. pieces.Lots.Select((_, l) => Point(pieces.OfLot(l, values), pieces.OfLot(l, bounds), question))],
            Scatter = capped > 0 ? [] : LevelScatter.Of(pieces.Design, pieces.BySweep((s, j) => s.At(j, f))),
            Capped = capped,
            Probability = readable ? CensoredAnova.Of(values, bounds, pieces.LotOf)?.Probability : null,
            Adjusted = null,
        };
    }

    private static LotPoint Point(double[] values, bool[] bounds, LotQuestion question)
    {
        bool readable = Array.TrueForAll(values, double.IsFinite);
        return new LotPoint(
            readable ? Sample.Mean(values) : double.NaN, bounds.Contains(true),
            readable && values.Length > 1 ? Promised(values, bounds, (question.Share, question.Confidence.Level)) : null);
    }

    // Many specimens need no distribution, and a bound is as good there as the value above it. The factor of few is drawn, which many would take long for.
    private static double? Promised(double[] values, bool[] bounds, (double Share, double Confidence) asked) =>
        bounds.Contains(true) && values.Length >= ToleranceLimit.FewestWithoutDistribution(asked.Share, asked.Confidence)
            ? CensoredTolerance.LowerLimitWithoutDistribution(values, asked.Share, asked.Confidence)
            : CensoredTolerance.LowerLimit(values, bounds, asked.Share, asked.Confidence);
}
