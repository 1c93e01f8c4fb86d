using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>One lot of one campaign at each of the frequencies that several campaigns are compared at. In dB.</summary>
internal sealed class LotOverFrequency
{
    /// <summary>Mean over its specimens; not a number where one is known from below only.</summary>
    public required double[] MeanDb { get; init; }

    /// <summary>How many of them are known from below only.</summary>
    public required int[] Capped { get; init; }

    /// <summary>Error of the mean by the scatter of the specimens.</summary>
    public required Contribution[] Scatter { get; init; }

    /// <summary>
    /// What all specimens share: reference, floor, and what is stated; null where the reference does not repeat.
    /// </summary>
    public required Contribution[]?[] Shared { get; init; }

    /// <param name="values">Of each specimen at each frequency.</param>
    /// <param name="bounds">Where a value is a bound.</param>
    /// <param name="shared">What all specimens of the campaign share; the reference first.</param>
    public static LotOverFrequency Of(double[][] values, bool[][] bounds, Contribution[]?[] shared)
    {
        int[] capped = [.. shared.Select((_, f) => bounds.Count(b => b[f]))];
        double[][] at = [.. shared.Select((_, f) => values.Select(v => v[f]).ToArray())];
        double[] errors =
            [.. at.Select(
                (v, f) => capped[f] > 0 || v.Length < 2 ? double.NaN : Sample.StandardDeviation(v) / Math.Sqrt(v.Length))];
        return new LotOverFrequency
        {
            MeanDb = [.. at.Select((v, f) => capped[f] > 0 ? double.NaN : Sample.Mean(v))],
            Capped = capped,
            Scatter = [.. NeighbourhoodErrors.Of(errors).Select(e => new Contribution(e, Math.Max(1, values.Length - 1)))],
            Shared = SteadyReference(shared),
        };
    }

    // An error of the reference goes through many frequencies; where its few sweeps happen to meet it is there all the same.
    private static Contribution[]?[] SteadyReference(Contribution[]?[] shared)
    {
        double[] reference = NeighbourhoodErrors.Of([.. shared.Select(s => s is null ? double.NaN : s[0].StandardUncertainty)]);
        return [.. shared.Select(
            (s, f) => s is null ? null : (Contribution[])[s[0] with { StandardUncertainty = reference[f] }, .. s[1..]])];
    }
}
