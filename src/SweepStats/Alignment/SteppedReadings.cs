using SweepStats.Statistics;

namespace SweepStats.Alignment;

/// <summary>How often chance makes readings of a steady level agree on a display that shows levels in steps.</summary>
/// <remarks>
/// A level L with a normal scatter s reads as the whole step nearest to L + s·z. Steps and scatter in dB. Error: that of the
/// normal distribution, 1e-12.
/// </remarks>
internal static class SteppedReadings
{
    /// <summary>
    /// Chance that two readings agree, averaged over where the level lies between two steps: E max(0, 1 − |d|/q) of a
    /// difference d with √2·s.
    /// </summary>
    /// <param name="stepDb">Step q; 0 for none.</param>
    /// <param name="scatterDb">Scatter s of one reading.</param>
    public static double TwoAgree(double stepDb, double scatterDb)
    {
        if (scatterDb == 0 || stepDb == 0)
        {
            return scatterDb == 0 ? 1 : 0;
        }

        double apart = Math.Sqrt(2) * scatterDb;
        double z = stepDb / apart;
        return Within(z) - (2 / (z * Math.Sqrt(2 * Math.PI)) * (1 - Math.Exp(-z * z / 2)));
    }

    /// <summary>
    /// Highest chance that a reading falls into one step: the level lies in its middle. All of n readings agree with at most
    /// its (n−1)th power: Σpᵢⁿ ≤ (max p)ⁿ⁻¹.
    /// </summary>
    /// <param name="stepDb">Step q; 0 for none.</param>
    /// <param name="scatterDb">Scatter s of one reading, above 0.</param>
    public static double InOneStep(double stepDb, double scatterDb) => Within(stepDb / 2 / scatterDb);

    // Chance that a standard normal variable lies within z of 0.
    private static double Within(double z) => 1 - (2 * Math.Exp(NormalTail.LogCdf(-z)));
}
