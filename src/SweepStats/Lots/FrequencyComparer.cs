using System.Runtime.InteropServices;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>Compares lots frequency by frequency.</summary>
/// <param name="specimens">The specimens in their lots.</param>
/// <param name="curves">Their shielding, in the same order.</param>
/// <param name="question">What is asked.</param>
internal sealed class FrequencyComparer(LotSpecimens specimens, ImmutableArray<ShieldingCurve> curves, LotQuestion question)
{
    // Their part of all sweeps of a hundred specimens fits the nearest memory of a processor, and a machine has work for all of
    // these. That of thousands comes from a file, where more at a time is faster.
    private readonly int _neighbours = curves.Length <= 500 ? 32 : 128;

    /// <summary>All frequencies.</summary>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public LotFrequency[] All(int threads) =>
        [.. SideBySide.Of((specimens.Grid.Count + _neighbours - 1) / _neighbours, threads, Stretch)
            .SelectMany(frequencies => frequencies)];

    private LotFrequency[] Stretch(int number)
    {
        int first = number * _neighbours, count = Math.Min(_neighbours, specimens.Grid.Count - first);
        var sweeps = new SweepScatter(specimens, first, count);
        double[][] shifts = [.. curves.Select(curve => FloorShifts(curve, first, count))];
        return [.. Enumerable.Range(0, count).Select(k => At(first + k, sweeps, Array.ConvertAll(shifts, s => s[k])))];
    }

    private static double[] FloorShifts(ShieldingCurve curve, int first, int count)
    {
        var shifts = new double[count];
        curve.Spread?.ReadFloorShifts(first, shifts);
        return shifts;
    }

    private LotFrequency At(int f, SweepScatter sweeps, double[] floorShifts)
    {
        var values = new double[curves.Length];
        var bounds = new bool[curves.Length];
        for (int i = 0; i < values.Length; i++)
        {
            (values[i], bounds[i]) = (specimens.Specimens[i].Values[f], specimens.Specimens[i].Bounds[f]);
        }

        int capped = bounds.AsSpan().Count(true);
        bool readable = Array.TrueForAll(values, double.IsFinite);
        var points = new LotPoint[specimens.Lots.Length];
        for (int l = 0; l < points.Length; l++)
        {
            points[l] = Point(f, l, values, bounds, specimens.OfLot<double>(l, floorShifts));
        }

        return new LotFrequency
        {
            At = specimens.Grid[f],
            Lots = ImmutableCollectionsMarshal.AsImmutableArray(points),
            Scatter = capped > 0 ? [] : LevelScatter.Of(specimens.Design, sweeps.At(f)),
            Capped = capped,
            Probability = readable ? CensoredAnova.Of(values, bounds, specimens.LotOf)?.Probability : null,
            Adjusted = null,
        };
    }

    private LotPoint Point(int f, int lot, double[] all, bool[] allBounds, double[] floorShifts)
    {
        double[] values = specimens.OfLot<double>(lot, all);
        bool[] bounds = specimens.OfLot<bool>(lot, allBounds);
        bool readable = Array.TrueForAll(values, double.IsFinite);
        ToleranceBound? own = readable && values.Length > 1 ? Promised(values, bounds) : null;
        double? promised = own is { } bound && Shared(f, floorShifts, bounds) is { } shared
            ? bound.Less(SharedErrors.Reach(shared, question.Confidence.Level)) : null;
        return new LotPoint(readable ? Sample.Mean(values) : double.NaN, bounds.AsSpan().Contains(true), promised, own?.Limit);
    }

    // Bounds hold by themselves; where all are bounds the reference's error is that of any.
    private Contribution[]? Shared(int f, double[] floorShifts, bool[] bounds)
    {
        int capped = bounds.AsSpan().Count(true);
        return SharedErrors.At(f, curves[0].Spread,
            capped == 0 || capped == bounds.Length ? floorShifts : [.. floorShifts.Where((_, i) => !bounds[i])]);
    }

    // Many specimens need no distribution, and a bound is as good there as the value above it. The factor of few is drawn, which
    // many would take long for.
    private ToleranceBound? Promised(double[] values, bool[] bounds)
    {
        (double share, double confidence) = (question.Share, question.Confidence.Level);
        return bounds.AsSpan().Contains(true) && values.Length >= ToleranceLimit.FewestWithoutDistribution(share, confidence)
            ? CensoredTolerance.LowerLimitWithoutDistribution(values, share, confidence) is { } limit
            ? new ToleranceBound(limit, limit) : null
            : CensoredTolerance.Lower(values, bounds, share, confidence);
    }
}
