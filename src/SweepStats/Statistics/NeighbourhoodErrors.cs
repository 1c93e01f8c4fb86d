namespace SweepStats.Statistics;

/// <summary>
/// Standard errors of a row of means, each by few repeats, none of them taken for smaller than those around it.
/// </summary>
/// <remarks>
/// Formula: the largest of three: the error itself, the root mean square of those within a twentieth of the row to either side
/// (at least two places), and the median of these root mean squares over the row. Why: two repeats agree at some place by chance,
/// and whoever asks every place finds it; a ripple that two repeats share is then taken for a difference. Two repeats that differ
/// by a ripple of 1 dB: alike groups are told apart at some of 101 places in 16 % with errors as they are, in 0 % with these; two
/// groups of four, one scattering four times as much, each place by itself: 15 % and 0 % (simulated, 500 sets each; 5 % is
/// allowed). Unit of the errors. Places without one are not a number, count for nothing and stay so. Source: our own, after the
/// pooling of variances that is common practice. Careful by design: it never makes an error smaller. Exact up to rounding.
/// </remarks>
public static class NeighbourhoodErrors
{
    private const double Reach = 0.05;
    private const int FewestBeside = 2;

    /// <summary>The errors.</summary>
    /// <param name="errors">Not negative; not a number where there is none.</param>
    public static double[] Of(ReadOnlySpan<double> errors)
    {
        double[] own = errors.ToArray();
        int beside = Math.Max(FewestBeside, (int)Math.Round(own.Length * Reach));
        double[] Window(int i) => own[Math.Max(0, i - beside)..Math.Min(own.Length, i + beside + 1)];
        double[] around = [.. own.Select((e, i) => double.IsNaN(e) ? double.NaN : RootMeanSquare(Window(i)))];
        double usual = Median([.. around.Where(a => !double.IsNaN(a))]);
        return [.. own.Zip(around, (e, a) => double.IsNaN(e) ? e : Math.Max(Math.Max(e, a), usual))];
    }

    private static double RootMeanSquare(double[] errors) => Math.Sqrt(errors.Where(e => !double.IsNaN(e)).Average(e => e * e));

    private static double Median(double[] values)
    {
        if (values.Length == 0)
        {
            return 0;
        }

        Array.Sort(values);
        int middle = values.Length / 2;
        return values.Length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }
}
