using SweepStats.Alignment;
using SweepStats.Statistics;

namespace SweepStats.Floor;

/// <summary>Finds frequencies where the floor holds more than noise.</summary>
internal static class AmbientSearch
{
    // Chance of one false alarm in a whole clean floor, shared by the two tests and all frequencies.
    private const double FalseAlarm = 0.005;
    private const int HalfWidth = 15;

    // A median errs 1.25 times as far as a mean (normal variables); the tail of log noise is so short that the baseline's own error must be allowed for.
    private const double MedianError = 1.25;
    private const double BaselineErrors = 1.5;

    // A slow ripple of the floor is no transmitter, however many sweeps resolve it.
    private const double LeastExcessDb = 1;

    /// <summary>Marks frequencies that stand above their neighbourhood (steady) or that some sweep shows higher than noise goes (intermittent).</summary>
    /// <param name="floor">The floor sweeps.</param>
    /// <param name="scatter">The same, split.</param>
    /// <param name="noise">How noise alone reads.</param>
    public static bool[] Mark(SweepBlock floor, FloorScatter scatter, DetectorNoise noise)
    {
        int sweeps = floor.SweepCount;
        double[] mean = scatter.Mean;
        // The median of skewed means lies beside their expectation.
        double[] baseline = Baseline(mean);
        double skew = noise.CriticalRise(sweeps, 0.5);
        double share = FalseAlarm / 2 / mean.Length;
        double own = BaselineErrors * MedianError * noise.LogStandardDeviation / Math.Sqrt(sweeps * Math.Min(mean.Length, (2 * HalfWidth) + 1));
        double steady = Math.Max(LeastExcessDb, noise.CriticalRise(sweeps, 1 - share) + own);
        double single = Math.Max(LeastExcessDb, noise.HighestReading(1 - (share / sweeps)) + own);
        var marks = new bool[mean.Length];
        for (int f = 0; f < marks.Length; f++)
        {
            double quiet = baseline[f] - skew;
            marks[f] = mean[f] - quiet > steady;
            for (int j = 0; j < sweeps && !marks[f]; j++)
            {
                marks[f] = floor[j][f] - scatter.Offset[j] - quiet > single;
            }
        }

        return marks;
    }

    // A window cut off at the end of the band looks to one side, where a sloping floor is lower or higher: there it shrinks with the distance to the end.
    private static double[] Baseline(double[] mean)
    {
        double[] baseline = RunningMedian.Of(mean, HalfWidth);
        int last = mean.Length - 1;
        for (int f = 0; f < mean.Length; f++)
        {
            int room = Math.Min(f, last - f);
            if (room < HalfWidth)
            {
                int half = Math.Min(last, Math.Max(room, 2));
                int start = Math.Clamp(f - half, 0, last);
                int end = Math.Clamp(f + half, 0, last);
                baseline[f] = RunningMedian.Of(mean.AsSpan(start, end - start + 1), mean.Length)[0];
            }
        }

        return baseline;
    }
}
