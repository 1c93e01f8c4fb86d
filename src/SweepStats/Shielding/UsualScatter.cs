namespace SweepStats.Shielding;

/// <summary>What errors of the mean are usual around each frequency.</summary>
internal static class UsualScatter
{
    // Enough that their mean is known to a fifth even with two units, and few enough that it follows noise that grows with
    // frequency.
    private const int Neighbours = 16;

    /// <summary>
    /// Mean square of the errors of each frequency and its neighbours to both sides, in the squared unit of the errors.
    /// </summary>
    public static double[] Of(double[] errors)
    {
        var sums = new double[errors.Length + 1];
        for (int f = 0; f < errors.Length; f++)
        {
            sums[f + 1] = sums[f] + (errors[f] * errors[f]);
        }

        var smooth = new double[errors.Length];
        for (int f = 0; f < smooth.Length; f++)
        {
            int first = Math.Max(0, f - Neighbours), end = Math.Min(errors.Length, f + Neighbours + 1);
            smooth[f] = Math.Max(0, (sums[end] - sums[first]) / (end - first));
        }

        return smooth;
    }
}
