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

    // One odd lot moves the mean that the others are held against: of three, each of the others lies half as far off as the odd
    // one, and stands out in nothing.
    private const double Outstanding = 0.65;

    internal static ImmutableArray<LotStretch> Of(ImmutableArray<LotFrequency> frequencies, ImmutableArray<string> lots,
        double falseAlarm)
    {
        Differing[] differing = [.. Enumerable.Range(0, frequencies.Length).Where(f => frequencies[f].Adjusted <= falseAlarm)
            .Select(f => new Differing(f, frequencies[f]))];
        return [.. lots.SelectMany((lot, l) => Runs(differing, l).Select(run => Stretch(lot, l, run)))
            .OrderByDescending(s => s.Frequencies * Math.Abs(s.ApartDb)).ThenBy(s => s.Band.Start)];
    }

    private static List<List<Differing>> Runs(Differing[] differing, int lot)
    {
        List<List<Differing>> runs = [];
        foreach (Differing here in differing.Where(d => d.StandsOut(lot)))
        {
            if (runs.Count == 0 || !here.Continues(runs[^1][^1], lot))
            {
                runs.Add([]);
            }

            runs[^1].Add(here);
        }

        return runs;
    }

    private static LotStretch Stretch(string name, int lot, List<Differing> run)
    {
        Differing[] told = [.. run.Where(d => !d.Hides(lot))];
        return new LotStretch(
            new FrequencyBand(run[0].At.At, run[^1].At.At), run.Count, told.Length > 0 ? name : null,
            (told.Length > 0 ? told : [.. run]).Average(d => d.ApartDb[lot]), run.Exists(d => d.AnyBound));
    }

    /// <summary>A frequency at which lots differ.</summary>
    private sealed class Differing
    {
        private readonly int _place;
        private readonly double _farthest;
        private readonly int _bounds;

        /// <summary>Holds every lot against the mean of the others there; the place is that among all frequencies.</summary>
        public Differing(int place, LotFrequency at)
        {
            (_place, At) = (place, at);
            ApartDb = [.. at.Lots.Select((_, l) => Apart(at, l))];
            _farthest = ApartDb.Max(Math.Abs);
            _bounds = at.Lots.Count(l => l.Bound);
        }

        /// <summary>The lots at this frequency.</summary>
        public LotFrequency At { get; }

        /// <summary>How far the mean of each lot lies from that of the others.</summary>
        public double[] ApartDb { get; }

        /// <summary>Whether one lot at least has a specimen known from below only.</summary>
        public bool AnyBound => _bounds > 0;

        /// <summary>Whether a lot lies at least 0.65 times as far off as the farthest; of two lots only the first does.</summary>
        // Of two lots both lie as far apart; one of them is enough to tell.
        public bool StandsOut(int lot) => !(ApartDb.Length <= 2 && lot > 0) && Math.Abs(ApartDb[lot]) >= Outstanding * _farthest;

        /// <summary>Whether a lot lies on the same side as before, and no more than three frequencies are between.</summary>
        public bool Continues(Differing before, int lot) =>
            ApartDb[lot] < 0 == before.ApartDb[lot] < 0 && _place - before._place <= LongestGap + 1;

        /// <summary>Whether bounds hide that it is this lot that stands out.</summary>
        // Bounds only ever move up: a lot that lies lower than bounds does so all the more, and one that is a bound itself lies
        // higher all the more.
        public bool Hides(int lot)
        {
            bool own = At.Lots[lot].Bound;
            return ApartDb[lot] < 0 ? own : _bounds > (own ? 1 : 0);
        }

        private static double Apart(LotFrequency at, int lot)
        {
            double others = 0;
            for (int l = 0; l < at.Lots.Length; l++)
            {
                others += l == lot ? 0 : at.Lots[l].MeanDb;
            }

            return at.Lots[lot].MeanDb - (others / (at.Lots.Length - 1));
        }
    }
}
