using SweepStats.Statistics;

namespace SweepStats.Lots;

/// <summary>What a control chart follows over time.</summary>
public enum ControlFigure
{
    /// <summary>Mean of each lot (X-bar).</summary>
    LotMean,

    /// <summary>Standard deviation of the specimens of each lot (S).</summary>
    LotDeviation,

    /// <summary>Each specimen for itself.</summary>
    Specimen,

    /// <summary>Distance of each specimen from the one before.</summary>
    MovingRange,
}

/// <summary>One point of a control chart, with its own limits: lots may hold different numbers of specimens.</summary>
/// <param name="Label">Lot, or lot and specimen.</param>
/// <param name="TakenAt">When its first sweep was taken; null where not noted.</param>
/// <param name="Value">In dB.</param>
/// <param name="Low">Lower control limit.</param>
/// <param name="High">Upper control limit.</param>
public readonly record struct ControlPoint(string Label, DateTimeOffset? TakenAt, double Value, double Low, double High)
{
    /// <summary>Outside its limits.</summary>
    public bool Outside => Value < Low || Value > High;
}

/// <summary>A figure over time with control limits three standard deviations from its centre. Immutable.</summary>
/// <remarks>
/// The scatter behind the limits is that within lots (mean of s/c4) or between neighbours (mean moving range over d2), so that a
/// lot that is off does not widen its own limits. With few points the limits are rough: custom asks for 20 and more. Source: ISO
/// 7870-2:2013 (from memory).
/// </remarks>
/// <param name="Figure">What it follows.</param>
/// <param name="CentreDb">Centre line in dB.</param>
/// <param name="Points">In the order of time.</param>
public sealed record ControlChart(ControlFigure Figure, double CentreDb, ImmutableArray<ControlPoint> Points)
{
    // Standard deviations to the control limits, by custom of the trade.
    private const double Reach = 3;

    // Standard deviation of the range of two normal values, over theirs: √(2 − 4/π).
    private static readonly double RangeScatter = Math.Sqrt(2 - (4 / Math.PI));

    /// <summary>
    /// Means and standard deviations of lots of two specimens and more; empty for fewer than three such lots, or where nothing
    /// scatters.
    /// </summary>
    internal static ImmutableArray<ControlChart> OfLots(IReadOnlyList<TimedSpecimen> pieces)
    {
        var lots = pieces.GroupBy(p => p.Lot)
            .Select(g => (g.Key, Taken: g.Min(p => p.TakenAt), Values: g.Select(p => p.MeanDb).ToArray()))
            .Where(l => l.Values.Length > 1).ToList();
        double[] deviations = [.. lots.Select(l => Sample.StandardDeviation(l.Values))];
        double usual = lots.Count > 2 ? lots.Zip(deviations, (l, s) => s / ControlLimits.C4(l.Values.Length)).Average() : 0;
        if (!(usual > 0))
        {
            return [];
        }

        double centre = lots.Average(l => Sample.Mean(l.Values));
        return
        [
            new ControlChart(ControlFigure.LotMean, centre, [.. lots.Select(l =>
            {
                double reach = Reach * usual / Math.Sqrt(l.Values.Length);
                return new ControlPoint(l.Key, l.Taken, Sample.Mean(l.Values), centre - reach, centre + reach);
            })]),
            new ControlChart(ControlFigure.LotDeviation, deviations.Average(), [.. lots.Select((l, i) =>
            {
                (double low, double high) = ControlLimits.B(l.Values.Length);
                double expected = ControlLimits.C4(l.Values.Length) * usual;
                return new ControlPoint(l.Key, l.Taken, deviations[i], low * expected, high * expected);
            })]),
        ];
    }

    /// <summary>
    /// Single specimens and their moving ranges; empty for fewer than four specimens, where no lot has two of them, or where
    /// nothing scatters.
    /// </summary>
    internal static ImmutableArray<ControlChart> OfSpecimens(IReadOnlyList<TimedSpecimen> pieces)
    {
        // Single specimens of as many lots are different things, and no process over time.
        if (pieces.Count < 4 || pieces.Select(p => p.Lot).Distinct().Count() == pieces.Count)
        {
            return [];
        }

        double[] steps = [.. pieces.Skip(1).Select((p, i) => Math.Abs(p.MeanDb - pieces[i].MeanDb))];
        double step = steps.Average(), usual = step / ControlLimits.D2(2), centre = pieces.Average(p => p.MeanDb);
        return !(usual > 0) ? [] :
        [
            new ControlChart(ControlFigure.Specimen, centre,
                [.. pieces.Select(p => new ControlPoint($"{p.Lot}/{p.Specimen}", p.TakenAt, p.MeanDb, centre - (Reach * usual),
                    centre + (Reach * usual)))]),
            new ControlChart(ControlFigure.MovingRange, step,
                [.. pieces.Skip(1)
                    .Select((p, i) => new ControlPoint($"{p.Lot}/{p.Specimen}", p.TakenAt, steps[i], 0,
                        step + (Reach * RangeScatter * usual)))]),
        ];
    }
}
