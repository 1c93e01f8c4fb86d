using SweepStats.Quantities;
using SweepStats.Shielding;
using SweepStats.Statistics;
using SweepStats.Sweeps;

namespace SweepStats.Checks;

/// <summary>
/// A specimen that shields far more than all others of its lot: it is better cloth, or less was sent or received while it was
/// swept.
/// </summary>
/// <remarks>
/// A cable that was loose while one specimen was swept makes it read better by just what it lost, in each of its sweeps alike, so
/// that neither its sweeps nor its placements show it. Specimens of one lot are of one cloth. Where the reference or another
/// specimen was swept between its own sweeps, or the reference right before and right after them, the same would have had to
/// happen each time: then it is the cloth. A few that read so are told as long as most of the lot does not.
/// </remarks>
internal sealed class OddSpecimen : ICheck
{
    // Pieces of one cloth may differ, but hardly by ten times the power; where they are known to be even, by less, and where they
    // are known to be uneven, by more (judgement, no source).
    private const double UsualDb = 10, LeastDb = 5, MostDb = 20, Deviations = 5;
    private const int FewestFreedom = 3;

    // What reads like nothing in its place is no cloth to be held against.
    private const double NothingDb = 2;

    public string Code => "odd-specimen";

    public string? UntestedBecause(Evidence seen) => InLots(seen).Any(l => l.Length > 2) ? null
        : "no lot has three specimens with values in common at most frequencies";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        Level[][] lots = InLots(seen);
        Spread[] even = [.. lots.Select(l => Spread.Of(l[..Widest(l)]))];
        Spread all = even.Aggregate(default(Spread), (sum, spread) => sum + spread);
        OddLevel[] odd = [.. lots.Zip(even, (lot, own) => In(lot, all - own)).SelectMany(o => o)];
        HashSet<SpecimenName> names = [.. odd.Select(o => o.Level.Name)];
        Sweep[] others = odd.Length == 0 ? [] :
        [
            .. seen.Campaign.Reference.Sweeps,
            .. seen.Campaign.Covered.Where(c => !names.Contains(c.Name)).SelectMany(c => c.Block.Sweeps),
        ];
        return odd.Where(o => !IsSettled(seen, o.Level.Name, others)).Select(Told);
    }

    // Lowest first; those that read like nothing left out.
    private static Level[][] InLots(Evidence seen) =>
    [
        .. seen.Curves.GroupBy(c => c.Name.Lot).Select(lot => Levels([.. lot])
            .Where(l => l.MiddleDb > NothingDb).OrderBy(l => l.MiddleDb).ToArray()),
    ];

    private static IEnumerable<Level> Levels(ShieldingCurve[] lot)
    {
        ShieldingCurve[] read = [.. lot.Where(c => 2 * Measured(c).Count() > c.Readings.Length)];
        var having = new int[lot[0].Readings.Length];
        foreach (int f in read.SelectMany(Measured))
        {
            having[f]++;
        }

        int[] common = [.. Enumerable.Range(0, having.Length).Where(f => having[f] == read.Length)];
        return 2 * common.Length <= having.Length || read.Length == 0 ? []
            : read.Select(c => new Level(c.Name, Sample.Median([.. common.Select(f => c.Readings.ValuesDb[f])])));
    }

    private static IEnumerable<int> Measured(ShieldingCurve curve) => Enumerable.Range(0, curve.Readings.Length)
        .Where(f => curve.Readings.Mark(f).Kind is ReadingKind.Measured or ReadingKind.Unrepeated);

    // Places that leave fewer at and above them than below.
    private static IEnumerable<int> Upper(Level[] lot) => Enumerable.Range(0, lot.Length).Skip((lot.Length / 2) + 1);

    private static int Widest(Level[] lot) => Upper(lot).DefaultIfEmpty(lot.Length)
        .MaxBy(i => i == lot.Length ? 0 : lot[i].MiddleDb - lot[i - 1].MiddleDb);

    // From the first gap on that is told by what lies below it, so that two odd ones do not hide each other.
    private static IEnumerable<OddLevel> In(Level[] lot, Spread others)
    {
        foreach (int first in Upper(lot))
        {
            double limit = (Spread.Of(lot[..first]) + others).LimitDb;
            if (lot[first].MiddleDb - lot[first - 1].MiddleDb >= limit)
            {
                return lot[first..].Select(level => new OddLevel(level, lot[first - 1], first, limit));
            }
        }

        return [];
    }

    // What two odd ones share does not settle it for either.
    private static bool IsSettled(Evidence seen, SpecimenName name, Sweep[] others)
    {
        Sweep[] own = [.. seen.Campaign.Covered.Where(c => c.Name == name).SelectMany(c => c.Block.Sweeps)];
        if (own.Concat(others).Any(s => s.TakenAt is null))
        {
            return false;
        }

        DateTimeOffset? begins = own.Min(s => s.TakenAt), ends = own.Max(s => s.TakenAt);
        return others.Any(s => s.TakenAt > begins && s.TakenAt < ends)
            || (others.Where(s => s.TakenAt <= begins).MaxBy(s => s.TakenAt)?.Role == SweepRole.Reference
                && others.Where(s => s.TakenAt >= ends).MinBy(s => s.TakenAt)?.Role == SweepRole.Reference);
    }

    private Finding Told(OddLevel odd) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = SweepRole.Covered,
        Specimen = odd.Level.Name,
        Size = new Decibels(odd.ApartDb),
        Bias = new Bias(odd.ApartDb, 0),
        Message = $"{odd.Level.Name} shields {Amount.Db(odd.ApartDb)} more than any of {odd.Others} others of its lot. So "
            + "it reads too where a cable was loose while it was swept.",
        Basis = $"Medians over the frequencies at which the whole lot has values: {Amount.Db(odd.Level.MiddleDb)} against "
            + $"{Amount.Db(odd.Next.MiddleDb)} at most; told from {Amount.Db(odd.LimitDb)} on, unless the reference or another "
            + "specimen was swept between its own sweeps, or the reference right before and right after them.",
        NextStep = $"Look whether every cable was tight; then sweep {odd.Level.Name} once more, after another specimen or the "
            + "reference, as a placement of its own. Name the times of all sweeps (taken_at in sweeps.csv). If it reads the "
            + "same, it is the cloth.",
    };

    /// <summary>What a specimen shields in the middle of the frequencies that its lot has in common.</summary>
    private readonly record struct Level(SpecimenName Name, double MiddleDb);

    /// <summary>A specimen above the others of its lot, the highest of these, how many they are, and the limit.</summary>
    private sealed record OddLevel(Level Level, Level Next, int Others, double LimitDb)
    {
        public double ApartDb => Level.MiddleDb - Next.MiddleDb;
    }

    /// <summary>How far specimens of lots differ.</summary>
    private readonly record struct Spread(double Squares, int Freedom)
    {
        /// <summary>From where on a gap is told.</summary>
        public double LimitDb => Math.Clamp(Freedom == 0 ? 0 : Deviations * Math.Sqrt(Math.Max(0, Squares) / Freedom),
            Freedom < FewestFreedom ? UsualDb : LeastDb, MostDb);

        public static Spread operator +(Spread one, Spread other) =>
            new(one.Squares + other.Squares, one.Freedom + other.Freedom);

        public static Spread operator -(Spread one, Spread other) =>
            new(one.Squares - other.Squares, one.Freedom - other.Freedom);

        public static Spread Of(Level[] lot) => lot.Length < 2 ? default
            : new((lot.Length - 1) * Math.Pow(Sample.StandardDeviation([.. lot.Select(l => l.MiddleDb)]), 2), lot.Length - 1);
    }
}
