using System.Collections.Immutable;
using SweepStats.Quantities;

namespace SweepStats.Lots;

/// <summary>Neighbouring frequencies at which lots differ, and the lot that stands out there.</summary>
/// <param name="Band">From the first to the last of them.</param>
/// <param name="Frequencies">How many of them show the difference by themselves.</param>
/// <param name="Lot">The lot farthest from the mean of the others; null where bounds hide which it is.</param>
/// <param name="ApartDb">How far its mean lies from that of the others, in dB: less is negative.</param>
/// <param name="AtLeast">Others are known from below only: it is at least as far away.</param>
public sealed record LotStretch(FrequencyBand Band, int Frequencies, string? Lot, double ApartDb, bool AtLeast)
{
    // Single frequencies that do not show the difference by themselves do not end a stretch.
    private const int LongestGap = 3;

    internal static ImmutableArray<LotStretch> Of(ImmutableArray<LotFrequency> frequencies, ImmutableArray<string> lots, double falseAlarm)
    {
        int[] differing = [.. Enumerable.Range(0, frequencies.Length).Where(f => frequencies[f].Adjusted <= falseAlarm)];
        List<List<int>> runs = [];
        foreach (int f in differing)
        {
            if (runs.Count == 0 || f - runs[^1][^1] > LongestGap + 1)
            {
                runs.Add([]);
            }

            runs[^1].Add(f);
        }

        return [.. runs.Select(run => Stretch(frequencies, lots, run)).OrderByDescending(s => s.Frequencies * Math.Abs(s.ApartDb)).ThenBy(s => s.Band.Start)];
    }

    private static LotStretch Stretch(ImmutableArray<LotFrequency> frequencies, ImmutableArray<string> lots, List<int> run)
    {
        double[] apart = [.. lots.Select((_, l) => run.Average(f => frequencies[f].Lots[l].MeanDb - Others(frequencies[f], l).Average(o => o.MeanDb)))];
        int farthest = Array.IndexOf(apart, apart.MaxBy(Math.Abs));
        bool othersBound = run.Exists(f => Others(frequencies[f], farthest).Any(o => o.Bound)), ownBound = run.Exists(f => frequencies[f].Lots[farthest].Bound);
        // Bounds only ever move up: a lot that lies lower than bounds does so all the more.
        bool atLeast = apart[farthest] < 0 ? othersBound && !ownBound : ownBound && !othersBound;
        return new LotStretch(
            new FrequencyBand(frequencies[run[0]].At, frequencies[run[^1]].At), run.Count,
            atLeast || !(othersBound || ownBound) ? lots[farthest] : null, apart[farthest], atLeast);
    }

    private static IEnumerable<LotPoint> Others(LotFrequency at, int lot) => at.Lots.Where((_, l) => l != lot);
}
