namespace SweepStats.Statistics;

/// <summary>Where a quantity that only grows along a row reaches a level, from readings that scatter.</summary>
/// <remarks>
/// Of all places the first is taken that leaves before it the least sum of reading less level. There the non-decreasing fit of
/// least squares (isotonic regression) reaches the level: it lies below before that place and at or above from there on. No law
/// of growth is assumed. Exact but for rounding of the running sum. Source: Robertson, Wright and Dykstra 1988, Order Restricted
/// Statistical Inference, 1.4 (min-max formulas; from memory); held against isoreg of R.
/// </remarks>
public static class MonotoneThreshold
{
    /// <summary>
    /// The first place, from 0, at which the fit reaches the level; the number of readings where it does nowhere.
    /// </summary>
    /// <param name="readings">Readings along the row, finite.</param>
    /// <param name="level">The level, in the unit of the readings.</param>
    public static int FirstAtOrAbove(ReadOnlySpan<double> readings, double level)
    {
        (int first, double sum, double least) = (0, 0, 0);
        for (int i = 0; i < readings.Length; i++)
        {
            sum += readings[i] - level;
            if (sum < least)
            {
                (first, least) = (i + 1, sum);
            }
        }

        return first;
    }
}
