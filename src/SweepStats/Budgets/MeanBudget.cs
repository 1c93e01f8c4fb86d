using SweepStats.Bands;
using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Budgets;

/// <summary>Uncertainty budget of the mean over the band, from the parts that its limits are made of.</summary>
internal static class MeanBudget
{
    // Its place among the inputs: a covered level that is higher means less shielding.
    private const int Covered = 1;

    /// <summary>
    /// The budget; null where the mean has no limits, or is one of nothing but bounds, which do not move with an error.
    /// </summary>
    public static ShieldingBudget? Of(ShieldingCurve curve, BandStatement band, ImmutableArray<StatedError> errors,
        Confidence confidence)
    {
        if (band.MeanParts is not { Repeated: true } parts || band.MeanDb.Low is not { } low
            || curve.Readings.All(r => r is ShieldingReading.AtLeast))
        {
            return null;
        }

        var inputs = new BudgetInputs();
        inputs.Mean(BudgetPart.Reference, 0, parts.Reference);
        inputs.Mean(BudgetPart.Covered, 0, parts.Covered);
        int levels = 2;
        if (curve.Levels is { FloorKnown: true })
        {
            inputs.Mean(BudgetPart.Floor, 0, parts.Floor);
            levels++;
        }

        foreach (StatedError error in errors)
        {
            inputs.Stated(error);
        }

        return new ShieldingBudget(values => Sum(values, levels, parts, errors), inputs.Inputs, inputs.Lines, sloped: true)
        {
            Name = band.Name,
            At = null,
            Confidence = confidence,
            Reported = new Interval(low, band.MeanDb.High ?? double.PositiveInfinity),
            ByPlacement = curve.Levels is { ByPlacement: true },
            AveragingShiftDb = parts.AveragingShift,
        };
    }

    // The jackknife and the floor's shift already tell what the mean moves by; only stated errors have a share of their own.
    private static double Sum(ReadOnlySpan<double> values, int levels, FigureParts parts, ImmutableArray<StatedError> errors)
    {
        double sum = parts.Value;
        for (int i = 0; i < values.Length; i++)
        {
            sum += i >= levels ? errors[i - levels].Sign * parts.TypeBShare * values[i] : i == Covered ? -values[i] : values[i];
        }

        return sum;
    }
}
