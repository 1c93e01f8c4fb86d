using System.Collections.Immutable;
using SweepStats.Alignment;
using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Compares the lots of one campaign.</summary>
/// <remarks>
/// The piece is what counts as independent: lots are compared by the scatter of their specimens, frequency by frequency (<see cref="CensoredAnova"/>, false
/// discovery over the frequencies) and once for all (<see cref="CurveAnova"/>). A capped piece counts as "above its bound", never as a value. Scatter by level is
/// estimated from the sweeps by restricted likelihood.
/// </remarks>
public static class LotComparer
{
    /// <summary>Compares.</summary>
    /// <param name="campaign">The aligned sweeps.</param>
    /// <param name="curves">Shielding of its specimens, in the same order.</param>
    /// <param name="question">What is asked of the lots.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static LotComparison Of(AlignedCampaign campaign, ImmutableArray<ShieldingCurve> curves, LotQuestion question, int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(campaign);
        ArgumentNullException.ThrowIfNull(question);
        SpecimenSweeps[] specimens = [.. campaign.Covered.Zip(curves, SpecimenSweeps.Of)];
        LotDesign design = LotDesign.Of(specimens);
        string[] lots = [.. specimens.Select(s => s.Name.Lot).Distinct()];
        int[] lotOf = [.. specimens.Select(s => Array.IndexOf(lots, s.Name.Lot))];
        var frequencies = new LotFrequency[campaign.Grid.Count];
        Parallel.For(0, frequencies.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, threads) }, f => frequencies[f] = At(f, campaign, specimens, (design, lotOf)));
        double[] weights = Clear(LogWeights.Of(campaign.Grid), specimens);
        double share = weights.Sum();
        double[] means = [.. specimens.Select(s => share > 0 ? Mean(weights, share, f => s.Values[f]) : double.NaN)];
        double[][] byLot = [.. lots.Select((_, l) => means.Where((_, i) => lotOf[i] == l).ToArray())];
        return new LotComparison
        {
            Frequencies = Adjusted(frequencies),
            Lots = [.. lots.Select((name, l) => Summary(name, byLot[l], question))],
            Pairs = share > 0 ? [.. Pairs(lots, byLot, question.MarginDb)] : [],
            ClearShare = share,
            Band = share > 0 && lots.Length > 1 && specimens.Length > lots.Length
                ? CurveAnova.Of([.. specimens.Select(s => s.Values)], weights, lotOf) is { F: var ratio } test && double.IsFinite(ratio) ? test : null
                : null,
            BandScatter = share > 0 ? Scatter(design, [.. specimens.SelectMany(s => Enumerable.Range(0, s.SweepCount).Select(j => Mean(weights, share, f => s.At(j, f))))]) : [],
        };
    }

    private static LotFrequency At(int f, AlignedCampaign campaign, SpecimenSweeps[] specimens, (LotDesign Design, int[] LotOf) known)
    {
        double[] values = [.. specimens.Select(s => s.Values[f])];
        bool[] bounds = [.. specimens.Select(s => s.Bounds[f])];
        int capped = bounds.Count(b => b);
        bool readable = Array.TrueForAll(values, double.IsFinite);
        return new LotFrequency
        {
            At = campaign.Grid[f],
            Scatter = capped > 0 ? [] : Scatter(known.Design, [.. specimens.SelectMany(s => Enumerable.Range(0, s.SweepCount).Select(j => s.At(j, f)))]),
            Capped = capped,
            Probability = readable ? CensoredAnova.Of(values, bounds, known.LotOf)?.Probability : null,
            Adjusted = null,
        };
    }

    private static ImmutableArray<LevelDeviation> Scatter(LotDesign design, double[] values)
    {
        if (design.Nesting is not { } nesting)
        {
            return values.Length > 1 ? [new LevelDeviation(design.Innermost, Sample.StandardDeviation(values))] : [];
        }

        NestedComponents parts = NestedReml.Of(values, nesting);
        return [.. design.Levels.Zip(parts.Variances, (level, variance) => new LevelDeviation(level, Math.Sqrt(variance))), new LevelDeviation(design.Innermost, Math.Sqrt(parts.Residual))];
    }

    // Weights of the frequencies where every specimen has a value; 0 elsewhere.
    private static double[] Clear(double[] weights, SpecimenSweeps[] specimens) => [.. weights.Select((w, f) => Array.Exists(specimens, s => s.Bounds[f]) ? 0 : w)];

    private static double Mean(double[] weights, double share, Func<int, double> value)
    {
        double sum = 0;
        for (int f = 0; f < weights.Length; f++)
        {
            sum += weights[f] > 0 ? weights[f] * value(f) : 0;
        }

        return sum / share;
    }

    private static ImmutableArray<LotFrequency> Adjusted(LotFrequency[] frequencies)
    {
        int[] tested = [.. Enumerable.Range(0, frequencies.Length).Where(f => frequencies[f].Probability is not null)];
        double[] adjusted = FalseDiscovery.Adjusted([.. tested.Select(f => frequencies[f].Probability!.Value)]);
        for (int i = 0; i < tested.Length; i++)
        {
            frequencies[tested[i]] = frequencies[tested[i]] with { Adjusted = adjusted[i] };
        }

        return [.. frequencies];
    }

    private static LotSummary Summary(string lot, double[] means, LotQuestion question)
    {
        double mean = Sample.Mean(means);
        bool repeated = means.Length > 1 && double.IsFinite(mean);
        double deviation = repeated ? Sample.StandardDeviation(means) : 0;
        double reach = repeated ? StudentQuantile.Of(question.Confidence.TwoSidedQuantile).At(means.Length - 1) * deviation / Math.Sqrt(means.Length) : 0;
        return new LotSummary
        {
            Lot = lot,
            Specimens = means.Length,
            MeanDb = mean,
            MeanIntervalDb = repeated ? new Interval(mean - reach, mean + reach) : null,
            ToleranceLimitDb = repeated ? mean - (ToleranceLimit.NormalFactor(means.Length, question.Share, question.Confidence.Level) * deviation) : null,
        };
    }

    private static IEnumerable<LotPair> Pairs(string[] lots, double[][] means, double margin)
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
