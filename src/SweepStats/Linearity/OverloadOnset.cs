using SweepStats.Statistics;

namespace SweepStats.Linearity;

/// <summary>From which received level on a receiver that is shown to fall short does so.</summary>
/// <remarks>
/// The shortfall grows with the level, whatever its law (<see cref="MonotoneThreshold"/>). Where it passes the tolerance at the
/// lowest frequency already, nothing is known below that one either, and no level counts as free of overload. An error that all
/// frequencies share moves the threshold and does not average away: that is the price of not knowing the law.
/// </remarks>
internal static class OverloadOnset
{
    /// <summary>The received level at the higher setting in dB; −∞ where the receiver falls short at every frequency.</summary>
    /// <param name="low">The lower source level.</param>
    /// <param name="high">The higher source level.</param>
    /// <param name="rising">Frequencies to compare, by rising level.</param>
    /// <param name="toleranceDb">Shortfall that is not worth a bound, in dB, not negative.</param>
    public static double Of(SourceLevel low, SourceLevel high, int[] rising, double toleranceDb)
    {
        double step = high.Dbm - low.Dbm;
        int first = MonotoneThreshold.FirstAtOrAbove(
            [.. rising.Select(f => step - (high.MeanAt(f) - low.MeanAt(f)))], toleranceDb);
        return first == 0 ? double.NegativeInfinity
            : rising[first..].Select(high.MeanAt).DefaultIfEmpty(double.PositiveInfinity).Min();
    }
}
