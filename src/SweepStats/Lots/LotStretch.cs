using System.Collections.Immutable;
using SweepStats.Quantities;

namespace SweepStats.Lots;

/// <summary>Neighbouring frequencies at which lots differ, and the lot that stands out there.</summary>
/// <param name="Band">From the first to the last of them.</param>
/// <param name="Frequencies">How many of them show the difference by themselves.</param>
/// <param name="Lot">The lot farthest from the mean of the others; null where bounds hide which it is.</param>
/// <param name="ApartDb">How far its mean lies from that of the others, in dB: less is negative.</param>
/// <param name="AtLeast">Some specimen is known from below only: it is at least as far away.</param>
public sealed record LotStretch(FrequencyBand Band, int Frequencies, string? Lot, double ApartDb, bool AtLeast)
{
    // Single frequencies that do not show the difference by themselves do not end a stretch.
    private const int LongestGap = 3;

    internal static ImmutableArray<LotStretch> Of(ImmutableArray<LotFrequency> frequencies, ImmutableArray<string> lots, double falseAlarm)
    {
        List<(Standout Key, List<int> Run)> runs = [];
        for (int f = 0; f < frequencies.Length; f++)
        {
            if (frequencies[f].Adjusted <= falseAlarm)
            {
                Standout key = Farthest(frequencies[f]);
                List<int>? run = runs.FindLast(r => r.Key == key).Run;
                if (run is null || f - run[^1] > LongestGap + 1)
                {
                    runs.Add((key, run = []));
                }

                run.Add(f);
            }
        }

        return [.. runs.Select(r => Stretch(frequencies, lots, r.Key, r.Run)).OrderByDescending(s => s.Frequencies * Math.Abs(s.ApartDb)).ThenBy(s => s.Band.Start)];
    }

    private static LotStretch Stretch(ImmutableArray<LotFrequency> frequencies, ImmutableArray<string> lots, Standout key, List<int> run)
    {
        int[] told = [.. run.Where(f => !Hidden(frequencies[f], key))];
        return new LotStretch(
            new FrequencyBand(frequencies[run[0]].At, frequencies[run[^1]].At), run.Count, told.Length > 0 ? lots[key.Lot] : null,
            (told.Length > 0 ? told : [.. run]).Average(f => Apart(frequencies[f], key.Lot)), run.Exists(f => frequencies[f].Lots.Any(l => l.Bound)));
    }

    private static Standout Farthest(LotFrequency at)
    {
        int farthest = Enumerable.Range(0, at.Lots.Length).MaxBy(l => Math.Abs(Apart(at, l)));
        return new Standout(farthest, Apart(at, farthest) < 0);
    }

    // Bounds only ever move up: a lot that lies lower than bounds does so all the more, and one that is a bound itself lies higher all the more.
    private static bool Hidden(LotFrequency at, Standout key) => key.Less ? at.Lots[key.Lot].Bound : Others(at, key.Lot).Any(o => o.Bound);

    private static double Apart(LotFrequency at, int lot) => at.Lots[lot].MeanDb - Others(at, lot).Average(o => o.MeanDb);

    private static IEnumerable<LotPoint> Others(LotFrequency at, int lot) => at.Lots.Where((_, l) => l != lot);

    private readonly record struct Standout(int Lot, bool Less);
}
