using SweepStats.Quantities;

namespace SweepStats.Lots;

/// <summary>Neighbouring frequencies at which two lots differ to the same side.</summary>
/// <param name="First">One lot.</param>
/// <param name="Second">The other.</param>
/// <param name="Band">From the first to the last of them.</param>
/// <param name="Frequencies">How many of them show the difference by themselves.</param>
/// <param name="Hidden">
/// Frequencies in between at which a specimen of either lot is known from below only: nothing is said of these.
/// </param>
/// <param name="ApartDb">First less second, mean over all compared frequencies from the first to the last, in dB.</param>
public sealed record HistoryStretch(HistoryLot First, HistoryLot Second, FrequencyBand Band, int Frequencies, int Hidden,
    double ApartDb)
{
    // As within a campaign: single frequencies that do not show the difference by themselves do not end a stretch.
    private const int LongestGap = 3;

    /// <summary>How much it says beside others of the same pair: frequencies times decibels.</summary>
    public double Weight => Frequencies * Math.Abs(ApartDb);

    /// <summary>The stretches of a pair, the strongest first.</summary>
    internal static IEnumerable<HistoryStretch> Of(HistoryPair pair, ImmutableArray<Hertz> frequencies, double falseAlarm)
    {
        List<List<int>> runs = [];
        foreach (int f in Enumerable.Range(0, pair.Points.Length).Where(f => pair.Points[f].Adjusted <= falseAlarm))
        {
            int last = runs.Count > 0 ? runs[^1][^1] : -1;
            if (last < 0 || f - last > LongestGap + 1
                || (pair.Points[f].DifferenceDb < 0) != (pair.Points[last].DifferenceDb < 0))
            {
                runs.Add([]);
            }

            runs[^1].Add(f);
        }

        return runs.Select(run => Stretch(pair, frequencies, run)).OrderByDescending(s => s.Weight).ThenBy(s => s.Band.Start);
    }

    private static HistoryStretch Stretch(HistoryPair pair, ImmutableArray<Hertz> frequencies, List<int> run)
    {
        HistoryPoint[] from = [.. pair.Points[run[0]..(run[^1] + 1)]];
        return new HistoryStretch(
            pair.First, pair.Second, new FrequencyBand(frequencies[run[0]], frequencies[run[^1]]), run.Count,
            from.Count(p => p.Hidden), from.Where(p => !p.Hidden).Average(p => p.DifferenceDb));
    }
}
