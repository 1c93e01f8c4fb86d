namespace SweepStats.Floor;

/// <summary>Pools the floor over neighbouring frequencies as far as they agree.</summary>
/// <remarks>
/// Around each frequency the window doubles while its mean agrees with all narrower ones within their errors (intersection of
/// confidence intervals; Goldenshluger and Nemirovski 1997, from memory). On a flat floor that shrinks the error sixfold; at a
/// step or a slope, where receivers switch ranges, the window stays narrow instead of smearing the step over its neighbours.
/// </remarks>
internal static class FloorWindow
{
    // How far the true level may lie below a mean (two standard errors: wider ones smear steps over their neighbours) and above
    // it. Log readings of few looks fall 20 and 30 dB without any reason but chance; such a dip must not pass for a floor of its
    // own.
    private const double ProbabilityBelow = 0.977;
    private const double ProbabilityAbove = 0.002;

    // At the ends of the band a window would look to one side, which a slope biases: only the outermost point borrows from its
    // one neighbour.
    private const int Overhang = 1;
    private const int FullEnough = 17;
    private static readonly int[] NarrowerHalfWidths = [1, 2, 4];
    private static readonly int[] HalfWidths = [0, 1, 2, 4, 8, 16];

    /// <summary>
    /// Pooled level, number of frequencies behind it, and how far narrower windows disagree with it beyond chance, for each
    /// frequency.
    /// </summary>
    /// <param name="mean">Log mean at each frequency in dB.</param>
    /// <param name="leftOut">Frequencies that keep their own level and serve no neighbour.</param>
    /// <param name="noise">How noise reads.</param>
    /// <param name="readings">How many readings count.</param>
    public static (double[] Level, int[] Count, double[] Disagreement) Pool(
        ReadOnlySpan<double> mean, ReadOnlySpan<bool> leftOut, DetectorNoise noise, IndependentReadings readings)
    {
        Cumulated along = Cumulate(mean, leftOut);
        Slack[] reach = Reach(noise, readings);
        var level = new double[mean.Length];
        var count = new int[mean.Length];
        var disagreement = new double[mean.Length];
        double variance = noise.LogStandardDeviation * noise.LogStandardDeviation / readings.One;
        for (int f = 0; f < mean.Length; f++)
        {
            Pooled pooled = leftOut[f] ? new(mean[f], 1) : Widest(f, along, reach);
            (level[f], count[f]) = pooled;
            disagreement[f] = leftOut[f] ? 0 : Disagreement(f, pooled, along, new(variance, readings.Fewer));
        }

        return (level, count, disagreement);
    }

    // Beside a step the window to the quiet side grows on where the one round the point has to stop. Round the point is better
    // where both do: a slope biases it least.
    private static Pooled Widest(int f, Cumulated along, Slack[] reach)
    {
        int last = along.Sums.Length - 2;
        Pooled round = Grown(along, reach, half =>
        {
            int reachable = Math.Min(half, Math.Max(Math.Min(f, last - f), Overhang));
            return new(Math.Max(0, f - reachable), Math.Min(last, f + reachable));
        });
        if (round.Count >= FullEnough)
        {
            return round;
        }

        Pooled left = Grown(along, reach, half => new(Math.Max(0, f - (2 * half)), f));
        Pooled right = Grown(along, reach, half => new(f, Math.Min(last, f + (2 * half))));
        Pooled side = left.Count >= right.Count ? left : right;
        return side.Count > 2 * round.Count ? side : round;
    }

    // A step too small to be seen still moves the level. What narrower windows differ by, less what chance makes them differ by,
    // is taken as its size.
    private static double Disagreement(int f, Pooled pooled, Cumulated along, Chance variance)
    {
        double largest = 0;
        int last = along.Sums.Length - 2;
        foreach (int half in NarrowerHalfWidths)
        {
            int start = Math.Max(0, f - half);
            int end = Math.Min(last, f + half) + 1;
            int count = along.Counts[end] - along.Counts[start];
            if (count == 0 || count >= pooled.Count)
            {
                continue;
            }

            double apart = pooled.Level - ((along.Sums[end] - along.Sums[start]) / count);
            double chance = variance.One
                * ((Math.Min(variance.Fewer, count) / count) - (Math.Min(variance.Fewer, pooled.Count) / pooled.Count));
            largest = Math.Max(largest, (apart * apart) - chance);
        }

        return Math.Sqrt(largest);
    }

    private static Pooled Grown(Cumulated along, Slack[] reach, Func<int, Window> window)
    {
        Pooled best = default;
        double low = double.NegativeInfinity;
        double high = double.PositiveInfinity;
        foreach (int half in HalfWidths)
        {
            (int start, int last) = window(half);
            int end = last + 1;
            int count = along.Counts[end] - along.Counts[start];
            double level = (along.Sums[end] - along.Sums[start]) / count;
            low = Math.Max(low, level - reach[count].Below);
            high = Math.Min(high, level + reach[count].Above);
            if (low > high)
            {
                break;
            }

            best = new(level, count);
        }

        return best;
    }

    // By number of frequencies in a window; a reach of 0 for none.
    private static Slack[] Reach(DetectorNoise noise, IndependentReadings readings)
    {
        var reach = new Slack[(2 * HalfWidths[^1]) + 2];
        for (int count = 1; count < reach.Length; count++)
        {
            double independent = Math.Max(readings.One, readings.One * count / (count > 1 ? readings.Fewer : 1));
            reach[count] = new(
                noise.CriticalRise(independent, ProbabilityBelow), -noise.CriticalRise(independent, ProbabilityAbove));
        }

        return reach;
    }

    private static Cumulated Cumulate(ReadOnlySpan<double> mean, ReadOnlySpan<bool> leftOut)
    {
        var sums = new double[mean.Length + 1];
        var counts = new int[mean.Length + 1];
        for (int f = 0; f < mean.Length; f++)
        {
            sums[f + 1] = sums[f] + (leftOut[f] ? 0 : mean[f]);
            counts[f + 1] = counts[f] + (leftOut[f] ? 0 : 1);
        }

        return new(sums, counts);
    }

    /// <summary>A level in dB, and the number of frequencies behind it.</summary>
    private readonly record struct Pooled(double Level, int Count);

    /// <summary>Sums and numbers of the means at all frequencies below one.</summary>
    private readonly record struct Cumulated(double[] Sums, int[] Counts);

    /// <summary>The first and the last frequency that are pooled.</summary>
    private readonly record struct Window(int Start, int Last);

    /// <summary>How far in dB the true level may lie below a mean and above it.</summary>
    private readonly record struct Slack(double Below, double Above);

    /// <summary>Variance of one mean in dB², and how many times fewer than their number count together.</summary>
    private readonly record struct Chance(double One, double Fewer);
}
