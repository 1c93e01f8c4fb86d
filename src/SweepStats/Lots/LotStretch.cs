using System.Collections.Immutable;
using SweepStats.Quantities;

namespace SweepStats.Lots;

/// <summary>Neighbouring frequencies at which lots differ, and a lot that stands out there.</summary>
/// <param name="Band">From the first to the last of them.</param>
/// <param name="Frequencies">How many of them show the difference by themselves.</param>
/// <param name="Lot">A lot far from the mean of the others; null where bounds hide which it is.</param>
/// <param name="ApartDb">How far its mean lies from that of the others, in dB: less is negative.</param>
/// <param name="AtLeast">Some specimen is known from below only: it is at least as far away.</param>
public sealed record LotStretch(FrequencyBand Band, int Frequencies, string? Lot, double ApartDb, bool AtLeast)
{
    // Single frequencies that do not show the difference by themselves do not end a stretch.
    private const int LongestGap = 3;

    // One odd lot moves the mean that the others are held against: of three, each of the others lies half as far off as the odd one, and stands out in nothing.
    private const double Outstanding = 0.65;

    internal static ImmutableArray<LotStretch> Of(ImmutableArray<LotFrequency> frequencies, ImmutableArray<string> lots, double falseAlarm)
    {
        int[] differing = [.. Enumerable.Range(0, frequencies.Length).Where(f => frequencies[f].Adjusted <= falseAlarm)];
        return [.. lots.SelectMany((lot, l) => Runs(frequencies, differing, l).Select(run => Stretch(frequencies, lot, l, run)))
            .OrderByDescending(s => s.Frequencies * Math.Abs(s.ApartDb)).ThenBy(s => s.Band.Start)];
    }

    private static List<List<int>> Runs(ImmutableArray<LotFrequency> frequencies, int[] differing, int lot)
    {
        List<List<int>> runs = [];
        bool less = false;
        foreach (int f in differing.Where(f => StandsOut(frequencies[f], lot)))
        {
            bool below = Apart(frequencies[f], lot) < 0;
            if (runs.Count == 0 || below != less || f - runs[^1][^1] > LongestGap + 1)
            {
                runs.Add([]);
            }

            runs[^1].Add(f);
            less = below;
        }

        return runs;
    }

    private static LotStretch Stretch(ImmutableArray<LotFrequency> frequencies, string name, int lot, List<int> run)
    {
        int[] told = [.. run.Where(f => !Hidden(frequencies[f], lot))];
        return new LotStretch(
            new FrequencyBand(frequencies[run[0]].At, frequencies[run[^1]].At), run.Count, told.Length > 0 ? name : null,
            (told.Length > 0 ? told : [.. run]).Average(f => Apart(frequencies[f], lot)), run.Exists(f => frequencies[f].Lots.Any(l => l.Bound)));
    }

    // Of two lots both lie as far apart; one of them is enough to tell.
    private static bool StandsOut(LotFrequency at, int lot)
    {
        if (at.Lots.Length <= 2 && lot > 0)
        {
            return false;
        }

        double farthest = 0;
        for (int l = 0; l < at.Lots.Length; l++)
        {
            farthest = Math.Max(farthest, Math.Abs(Apart(at, l)));
        }

        return Math.Abs(Apart(at, lot)) >= Outstanding * farthest;
    }

    // Bounds only ever move up: a lot that lies lower than bounds does so all the more, and one that is a bound itself lies higher all the more.
    private static bool Hidden(LotFrequency at, int lot) => Apart(at, lot) < 0 ? at.Lots[lot].Bound : Others(at, lot).Any(o => o.Bound);

    private static double Apart(LotFrequency at, int lot)
    {
        double others = 0;
        for (int l = 0; l < at.Lots.Length; l++)
        {
            others += l == lot ? 0 : at.Lots[l].MeanDb;
        }

        return at.Lots[lot].MeanDb - (others / (at.Lots.Length - 1));
    }

    private static IEnumerable<LotPoint> Others(LotFrequency at, int lot) => at.Lots.Where((_, l) => l != lot);
}
