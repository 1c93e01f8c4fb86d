using SweepStats.Sweeps;

namespace SweepStats.Alignment;

/// <summary>
/// Whether sweeps whose levels all agree may have come about by chance: a steady level on a coarse display, a few points typed
/// by hand.
/// </summary>
/// <remarks>
/// Two real sweeps differ where a level lies near the edge of a step of the display, and a sweep passes at least one such edge
/// wherever neighbouring levels differ. With a chance p to disagree at a change, two sweeps of C changes agree everywhere with
/// chance (1 − p)ᶜ, and k further ones with the kth power of it. How often sweeps disagree is shown by other sweeps, best of
/// the same kind: twice the points at which their difference lies over its median, or under it where that is rarer, since an
/// offset that a whole sweep shares moves all points one way. Where there are no others, readings are taken to scatter by what
/// no receiver is better than.
/// </remarks>
internal sealed class CopyChance
{
    private const double ByChance = 1e-3;

    // No receiver repeats a signal better than to a hundredth of a dB, sweep after sweep, on a display that is no finer (common
    // practice, no source).
    private const double SteadiestSignalDb = 0.01;

    // Scatter of 10 000 looks at noise, the most that is reckoned with.
    private const double SteadiestNoiseDb = 0.0434;

    // Fewer levels may all lie on a coarser grid than the display's: others of the campaign are looked at too.
    private const int FewestLevels = 12;

    // A few points that happen to differ all do not show that every point always does.
    private const int ShownByNone = 2;

    // All pairs of many sweeps take long and tell no more.
    private const int MostCompared = 6;

    private readonly ImmutableArray<Sweep> _used;
    // Only where sweeps agree does anybody ask.
    private readonly Lazy<Dictionary<SweepKind, double?>> _shown;
    private readonly Dictionary<SweepKind, double> _rates = [];

    /// <summary>Takes all sweeps in use: how often sweeps of a kind disagree is looked up only where sweeps agree.</summary>
    public CopyChance(ImmutableArray<Sweep> used)
    {
        _used = used;
        _shown = new Lazy<Dictionary<SweepKind, double?>>(() => used.GroupBy(SweepKind.Of).ToDictionary(kind => kind.Key, Shown));
    }

    /// <summary>Whether so many sweeps with these levels are more than chance makes.</summary>
    /// <param name="sweep">One of the sweeps that agree.</param>
    /// <param name="alike">How many there are of its kind, at least 2.</param>
    public bool IsTellable(Sweep sweep, int alike) =>
        Math.Pow(1 - Rate(SweepKind.Of(sweep)), Changes(sweep) * (alike - 1)) < ByChance;

    /// <summary>How often neighbouring levels of a sweep differ.</summary>
    public static int Changes(Sweep sweep)
    {
        int changes = 0;
        for (int f = 1; f < sweep.Levels.Length; f++)
        {
            changes += sweep.Levels[f] != sweep.Levels[f - 1] ? 1 : 0;
        }

        return changes;
    }

    // Chance that two sweeps disagree at a change: shown by the kind itself, else by the steadiest other one, else by the step
    // of the display.
    private double Rate(SweepKind kind)
    {
        if (!_rates.TryGetValue(kind, out double rate))
        {
            double[] others = [.. _shown.Value.Where(k => k.Key.IsNoise == kind.IsNoise).Select(k => k.Value).OfType<double>()];
            rate = _shown.Value[kind] ?? (others.Length > 0 ? others.Min() : Assumed(kind));
            _rates.Add(kind, rate);
        }

        return rate;
    }

    private double Assumed(SweepKind kind)
    {
        ImmutableArray<Sweep> own = [.. _used.Where(s => SweepKind.Of(s) == kind)];
        IEnumerable<Sweep> shown = own.Sum(s => s.Levels.Length) >= FewestLevels ? own : _used;
        double step = DisplayStep.Shared(shown.SelectMany(s => s.Levels));
        return 1 - SteppedReadings.TwoAgree(step, kind.IsNoise ? SteadiestNoiseDb : SteadiestSignalDb);
    }

    private static double? Shown(IEnumerable<Sweep> kind)
    {
        List<Sweep> different = [];
        foreach (Sweep sweep in kind)
        {
            if (different.Count < MostCompared && !different.Exists(s => SameLevels(s, sweep)))
            {
                different.Add(sweep);
            }
        }

        return (from pair in different.SelectMany((a, i) => different.Take(i).Select(b => (A: a, B: b)))
                where pair.A.Grid.Equals(pair.B.Grid)
                select (double?)Disagreement(pair.A, pair.B)).Max();
    }

    private static double Disagreement(Sweep a, Sweep b)
    {
        double[] apart = [.. a.Levels.Zip(b.Levels, (x, y) => x - y).Order()];
        double middle = apart[apart.Length / 2];
        int over = apart.Count(d => d > middle + DisplayStep.Same);
        int under = apart.Count(d => d < middle - DisplayStep.Same);
        return Math.Min(1, 2.0 * Math.Min(over, under) / (ShownByNone + ((Changes(a) + Changes(b)) / 2.0)));
    }

    /// <summary>Whether two sweeps have the same frequencies and all levels agree.</summary>
    public static bool SameLevels(Sweep a, Sweep b) =>
        a.Grid.Equals(b.Grid) && a.Levels.AsSpan().SequenceEqual(b.Levels.AsSpan());
}
