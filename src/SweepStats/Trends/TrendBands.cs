using SweepStats.Bands;
using SweepStats.Quantities;
using SweepStats.Statistics;

namespace SweepStats.Trends;

/// <summary>Lines through the means of the specimens over a band.</summary>
internal static class TrendBands
{
    /// <summary>
    /// Means over the part of a band where every specimen is bounded from both sides, one a specimen; not numbers where no part
    /// is.
    /// </summary>
    public static double[] Means(TrendFrequencies at, NamedBand band)
    {
        double[] weights = LogWeights.Whole(Clear(at, band));
        bool clear = weights.Sum() > 0;
        return
        [
            .. Enumerable.Range(0, at.Values[0].Length)
                .Select(i => clear ? LogWeights.Mean(weights, f => at.Values[f][i]) : double.NaN),
        ];
    }

    /// <summary>What is known over a band; no line where no part of it is clear, or specimens or values are too few.</summary>
    public static TrendBand Of(FactorDesign design, TrendFrequencies at, NamedBand band, Confidence confidence)
    {
        double[] means = Means(at, band);
        double[] x = [.. design.X];
        bool known = double.IsFinite(means[0]) && design.Lack == TrendLack.None;
        IReadOnlyList<PairGroup> lots = design.ByLot(means);
        double? apart = known ? GroupsAboutLine.Probability(lots) : null;
        TrendLine? line = !known ? null
            : new TrendLine(RegressionLine.Of(x, means), LackOfFit.Of(x, means).Probability, confidence);
        int[] inside = [.. Enumerable.Range(0, at.Grid.Count).Where(f => band.Band.Contains(at.Grid[f]))];
        double falseAlarm = 1 - confidence.Level;
        return new TrendBand
        {
            Name = band.Name.Length == 0 ? null : band.Name,
            Band = new FrequencyBand(at.Grid[inside[0]], at.Grid[inside[^1]]),
            ClearShare = Clear(at, band).Sum(),
            Line = line,
            IsStraight = line is not null && !(line.StraightProbability <= falseAlarm),
            LotsApartProbability = apart,
            WithinLots = apart <= falseAlarm && CommonSlope.Of(lots) is { } slope
                ? new TrendSlope(slope.Value, slope.Interval(confidence)) : null,
        };
    }

    private static double[] Clear(TrendFrequencies at, NamedBand band) =>
        [.. LogWeights.Within(at.Grid, band.Band).Select((w, f) => at.Bounds[f].Contains(true) ? 0 : w)];
}
