using System.Collections.Immutable;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Compares lots at one frequency.</summary>
internal static class FrequencyComparer
{
    public static LotFrequency At(int f, (LotSpecimens Specimens, ImmutableArray<ShieldingCurve> Curves) of, LotQuestion question)
    {
        LotSpecimens specimens = of.Specimens;
        var values = new double[specimens.Specimens.Length];
        var bounds = new bool[values.Length];
        for (int i = 0; i < values.Length; i++)
        {
            (values[i], bounds[i]) = (specimens.Specimens[i].Values[f], specimens.Specimens[i].Bounds[f]);
        }

        int capped = bounds.AsSpan().Count(true);
        bool readable = Array.TrueForAll(values, double.IsFinite);
        return new LotFrequency
        {
            At = specimens.Grid[f],
            Lots = [.. Enumerable.Range(0, specimens.Lots.Length).Select(l => Point(f, l, of, (values, bounds), question))],
            Scatter = capped > 0 ? [] : LevelScatter.Of(specimens.Design, specimens.BySweep(f)),
            Capped = capped,
            Probability = readable ? CensoredAnova.Of(values, bounds, specimens.LotOf)?.Probability : null,
            Adjusted = null,
        };
    }

    private static LotPoint Point(
        int f, int lot, (LotSpecimens Specimens, ImmutableArray<ShieldingCurve> Curves) of, (double[] Values, bool[] Bounds) all, LotQuestion question)
    {
        bool[] bounds = of.Specimens.OfLot<bool>(lot, all.Bounds);
        return Point((of.Specimens.OfLot<double>(lot, all.Values), bounds), Shared(f, of.Specimens.OfLot(lot, of.Curves.AsSpan()), bounds), question);
    }

    // Bounds hold by themselves; where all are bounds the reference's error is that of any.
    private static Contribution[]? Shared(int f, ShieldingCurve[] curves, bool[] bounds)
    {
        int capped = bounds.AsSpan().Count(true);
        return SharedErrors.At(f, capped == 0 || capped == bounds.Length ? curves : [.. curves.Where((_, i) => !bounds[i])]);
    }

    private static LotPoint Point((double[] Values, bool[] Bounds) of, Contribution[]? shared, LotQuestion question)
    {
        bool readable = Array.TrueForAll(of.Values, double.IsFinite);
        ToleranceBound? own = readable && of.Values.Length > 1 ? Promised(of.Values, of.Bounds, (question.Share, question.Confidence.Level)) : null;
        return new LotPoint(
            readable ? Sample.Mean(of.Values) : double.NaN, of.Bounds.Contains(true),
            shared is null ? null : own?.Less(SharedErrors.Reach(shared, question.Confidence.Level)), own?.Limit);
    }

    // Many specimens need no distribution, and a bound is as good there as the value above it. The factor of few is drawn, which many would take long for.
    private static ToleranceBound? Promised(double[] values, bool[] bounds, (double Share, double Confidence) asked) =>
        bounds.Contains(true) && values.Length >= ToleranceLimit.FewestWithoutDistribution(asked.Share, asked.Confidence)
            ? CensoredTolerance.LowerLimitWithoutDistribution(values, asked.Share, asked.Confidence) is { } limit ? new ToleranceBound(limit, limit) : null
            : CensoredTolerance.Lower(values, bounds, asked.Share, asked.Confidence);
}
