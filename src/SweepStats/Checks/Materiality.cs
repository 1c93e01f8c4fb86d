using SweepStats.Shielding;
using SweepStats.Statistics;

namespace SweepStats.Checks;

/// <summary>The one rule by which a finding that knows its size is a warning or a note.</summary>
/// <remarks>
/// A warning is something that could move a printed figure by more than half of the half-width of its interval: the interval then
/// misses the truth in up to 17 of 100 cases instead of 5 (a normal error moved by 0.98 of its deviation). Less is a note. A
/// finding whose size nobody knows is a warning.
/// </remarks>
internal static class Materiality
{
    /// <summary>Share of the half-width of an interval from which on a shift matters.</summary>
    public const double Share = 0.5;

    /// <summary>Half the width of a typical interval in dB; 0 where there is none, so that any shift matters.</summary>
    public static double HalfWidthDb(IEnumerable<ShieldingCurve> curves)
    {
        double[] halves = [.. curves.SelectMany(c => c.Readings).OfType<ShieldingReading.Measured>().Select(HalfWidthDb)];
        return halves.Length == 0 ? 0 : Sample.Median(halves);
    }

    /// <summary>How much a finding weighs.</summary>
    /// <param name="shiftDb">What it could move a figure by in dB; null where nobody knows.</param>
    /// <param name="curves">The figures that it could move.</param>
    public static Severity Weight(double? shiftDb, IEnumerable<ShieldingCurve> curves) =>
        shiftDb is { } shift && Math.Abs(shift) <= Share * HalfWidthDb(curves) ? Severity.Note : Severity.Warning;

    /// <summary>Whether a shift in dB matters to one reading.</summary>
    public static bool Matters(double shiftDb, ShieldingReading reading) =>
        reading is ShieldingReading.Measured measured && Math.Abs(shiftDb) > Share * HalfWidthDb(measured);

    private static double HalfWidthDb(ShieldingReading.Measured reading) =>
        (reading.Shielding.High.Value - reading.Shielding.Low.Value) / 2;
}
