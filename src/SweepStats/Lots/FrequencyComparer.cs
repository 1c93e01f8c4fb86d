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
        double[] values = [.. specimens.Specimens.Select(s => s.Values[f])];
        bool[] bounds = [.. specimens.Specimens.Select(s => s.Bounds[f])];
        int capped = bounds.Count(b => b);
        bool readable = Array.TrueForAll(values, double.IsFinite);
        return new LotFrequency
        {
            At = specimens.Grid[f],
            Lots =
            [
                .. specimens.Lots.Select((_, l) => (Values: specimens.OfLot(l, values), Bounds: specimens.OfLot(l, bounds), Curves: specimens.OfLot(l, of.Curves)))
                    .Select(l => Point((l.Values, l.Bounds), Shared(f, l.Curves, l.Bounds), question)),
            ],
            Scatter = capped > 0 ? [] : LevelScatter.Of(specimens.Design, specimens.BySweep((s, j) => s.At(j, f))),
            Capped = capped,
            Probability = readable ? CensoredAnova.Of(values, bounds, specimens.LotOf)?.Probability : null,
            Adjusted = null,
        };
    }

    // Bounds hold by themselves; where all are bounds the reference's error is that of any.
    private static Contribution[]? Shared(int f, ShieldingCurve[] curves, bool[] bounds)
    {
        ShieldingCurve[] known = [.. curves.Where((_, i) => !bounds[i])];
        return SharedErrors.Of(known.Length > 0 ? known : curves, own => own(f));
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
