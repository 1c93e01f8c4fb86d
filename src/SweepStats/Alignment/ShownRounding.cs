namespace SweepStats.Alignment;

/// <summary>What a display's rounding leaves in a weighted sum over the frequencies of repeated sweeps.</summary>
/// <remarks>
/// All readings that are shown as one level are rounded by much the same where the true level is steady: the error of each shown
/// level counts once, with the weight of all readings that show it, u = q/√12·√Σp². A steady level has one shown level and the
/// whole error; a level that runs through many steps, or that scatters over them, averages it away. Assumes that the errors of
/// different shown levels are independent: a level that moves by nearly whole steps from frequency to frequency breaks that (at
/// 0.98 steps and 0.15 steps of scatter 26 of 32 intervals held).
/// </remarks>
internal static class ShownRounding
{
    // Of steps of a hundredth of a decibel nothing is left that an interval would show.
    private const double WorthCountingDb = 0.01;

    /// <summary>Standard uncertainty in dB of the sum.</summary>
    /// <param name="block">The sweeps, each with the same share.</param>
    /// <param name="deviationDb">Standard deviation of the rounding of one reading, in dB.</param>
    /// <param name="weights">One a frequency, of either sign.</param>
    public static double Of(SweepBlock block, double deviationDb, double[] weights)
    {
        if (deviationDb < WorthCountingDb)
        {
            return 0;
        }

        var shares = new Dictionary<double, double>();
        for (int j = 0; j < block.SweepCount; j++)
        {
            ReadOnlySpan<double> levels = block[j];
            for (int f = 0; f < levels.Length; f++)
            {
                shares[levels[f]] = shares.GetValueOrDefault(levels[f]) + (weights[f] / block.SweepCount);
            }
        }

        return deviationDb * Math.Sqrt(shares.Values.Sum(share => share * share));
    }
}
