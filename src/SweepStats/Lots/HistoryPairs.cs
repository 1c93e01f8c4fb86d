using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Every two lots of several campaigns that have two specimens each.</summary>
internal sealed class HistoryPairs
{
    private readonly HistoryPart[] _bands;
    private readonly List<LotPair> _pairs = [];
    private readonly double[][] _byBand;

    /// <param name="whole">Means over the whole band.</param>
    /// <param name="bands">Means over the named ones.</param>
    /// <param name="frequencies">The lots frequency by frequency, in their order.</param>
    public HistoryPairs(HistoryPart whole, HistoryPart[] bands, LotOverFrequency[] frequencies)
    {
        _bands = bands;
        bool Repeated(int lot) => whole.Lots[lot].Means.Length > 1;
        int[] lots = [.. Enumerable.Range(0, whole.Lots.Length).Where(Repeated)];
        _pairs.AddRange(lots.SelectMany((a, i) => lots[(i + 1)..].Select(b => new LotPair(a, b))));
        _byBand = [.. _pairs.Select(ByBand)];
        HistoryPair[] pairs = [.. _pairs.Select((p, i) => Pair(whole, frequencies, p, _byBand[i]))];
        int[] told = [.. Enumerable.Range(0, pairs.Length).Where(i => pairs[i].Probability is not null)];
        double[] adjusted = Holm.Adjusted([.. told.Select(i => pairs[i].Probability!.Value)]);
        for (int i = 0; i < told.Length; i++)
        {
            pairs[told[i]] = pairs[told[i]] with { Adjusted = adjusted[i] };
        }

        Whole = [.. pairs];
    }

    /// <summary>Over the whole band, with all frequencies.</summary>
    public ImmutableArray<HistoryPair> Whole { get; }

    /// <summary>Over a named one.</summary>
    public ImmutableArray<HistoryPair> OfBand(int band) =>
    [
        .. _pairs.Select((p, i) => new HistoryPair(
            _bands[band].Lots[p.First].Lot, _bands[band].Lots[p.Second].Lot, _bands[band].Tested(p.First, p.Second),
            double.IsNaN(_byBand[i][band]) ? null : Math.Max(_byBand[i][band], Whole[i].Adjusted ?? 1))),
    ];

    // Allowing for the number of bands; not a number where a band does not tell.
    private double[] ByBand(LotPair pair)
    {
        double?[] single = [.. _bands.Select(b => b.Tested(pair.First, pair.Second)?.ProbabilityAlike)];
        int[] told = [.. Enumerable.Range(0, single.Length).Where(b => single[b] is not null)];
        double[] adjusted = Holm.Adjusted([.. told.Select(b => single[b]!.Value)]);
        double[] all = [.. single.Select(_ => double.NaN)];
        for (int i = 0; i < told.Length; i++)
        {
            all[told[i]] = adjusted[i];
        }

        return all;
    }

    private static HistoryPair Pair(HistoryPart whole, LotOverFrequency[] frequencies, LotPair pair, double[] bands)
    {
        (HistoryEntry first, HistoryEntry second) = (whole.Lots[pair.First], whole.Lots[pair.Second]);
        ImmutableArray<HistoryPoint> points =
            HistoryPairComparer.Points(frequencies[pair.First], frequencies[pair.Second], first.IsOfTheSame(second));
        Equivalence? tested = whole.Tested(pair.First, pair.Second);
        double? named = bands.Where(b => !double.IsNaN(b)).Select(b => (double?)b).Min();
        return new HistoryPair(first.Lot, second.Lot, tested, null)
        {
            Points = points,
            Probability = HistoryPairComparer.Together(tested?.ProbabilityAlike, points.Min(p => p.Adjusted), named),
        };
    }

    /// <summary>Two lots by their places.</summary>
    private readonly record struct LotPair(int First, int Second);
}
