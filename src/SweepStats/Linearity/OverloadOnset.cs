namespace SweepStats.Linearity;

/// <summary>From which received level on a receiver that is shown to fall short does so.</summary>
/// <remarks>
/// The shortfall grows with the level, whatever its law. Of all thresholds the one is taken that leaves below it the least sum of shortfall less tolerance, over the
/// frequencies by rising level: there the monotone curve that fits the shortfalls best (isotonic regression) passes the tolerance. Where it is passed at the lowest
/// frequency already, nothing is known below that one either, and no level counts as free of overload. An error that all frequencies share moves the threshold and
/// does not average away: that is the price of not knowing the law.
/// Source: Robertson, Wright and Dykstra 1988, Order Restricted Statistical Inference, 1.4 (min-max formulas; from memory).
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
        (int first, double sum, double least) = (0, 0, 0);
        for (int i = 0; i < rising.Length; i++)
        {
            sum += step - (high.MeanAt(rising[i]) - low.MeanAt(rising[i])) - toleranceDb;
            (first, least) = sum < least ? (i + 1, sum) : (first, least);
        }

        return first == 0 ? double.NegativeInfinity : rising[first..].Select(high.MeanAt).DefaultIfEmpty(double.PositiveInfinity).Min();
    }
}
