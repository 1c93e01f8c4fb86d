using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Compares two lots of several campaigns at each frequency.</summary>
internal static class HistoryPairComparer
{
    /// <summary>Each frequency, with false discovery over those at which it can be told.</summary>
    public static ImmutableArray<HistoryPoint> Points(LotOverFrequency first, LotOverFrequency second, bool sameCampaign)
    {
        HistoryPoint[] points = [.. first.MeanDb.Select((_, f) => Point(first, second, f, sameCampaign))];
        double?[] single = [.. points.Select(p => p.Probability)];
        int[] told = [.. Enumerable.Range(0, points.Length).Where(f => single[f] is not null)];
        double[] adjusted = FalseDiscovery.Adjusted([.. told.Select(f => single[f]!.Value)]);
        for (int i = 0; i < told.Length; i++)
        {
            points[told[i]] = points[told[i]] with { Adjusted = adjusted[i] };
        }

        return [.. points];
    }

    /// <summary>
    /// Whether the two differ at all. Means over the band find what goes through it, single frequencies what is confined to a
    /// part of it, named bands what they are named for; the answer is the smallest of the p-values, and the price of each
    /// question is paid. Null where none can be told.
    /// </summary>
    /// <param name="asked">The answer of each question; null where it has none.</param>
    public static double? Together(params ReadOnlySpan<double?> asked)
    {
        double? least = null;
        int told = 0;
        foreach (double? probability in asked)
        {
            if (probability is { } p)
            {
                (least, told) = (Math.Min(least ?? 1, p), told + 1);
            }
        }

        return least is { } found ? Math.Min(1, told * found) : null;
    }

    // Between campaigns reference, floor and what is stated are not the same for both and do not drop out.
    private static HistoryPoint Point(LotOverFrequency first, LotOverFrequency second, int f, bool sameCampaign)
    {
        var unknown =
            new HistoryPoint(first.MeanDb[f] - second.MeanDb[f], double.NaN, double.NaN, first.Capped[f], second.Capped[f]);
        if (unknown.Hidden || (!sameCampaign && (first.Shared[f] is null || second.Shared[f] is null)))
        {
            return unknown;
        }

        Contribution[] parts =
            [first.Scatter[f], second.Scatter[f], .. sameCampaign ? [] : first.Shared[f]!.Concat(second.Shared[f]!)];
        return unknown with
        {
            ErrorDb = WelchSatterthwaite.Combined(parts),
            DegreesOfFreedom = WelchSatterthwaite.DegreesOfFreedom(parts),
        };
    }
}
