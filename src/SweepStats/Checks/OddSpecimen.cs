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
        : "no lot has three specimens with values at most frequencies";

    public IEnumerable<Finding> Inspect(Evidence seen)
    {
        Level[][] lots = InLots(seen);
        foreach (Level[] lot in lots.Where(l => l.Length > 2))
        {
            int first = First(lot);
            double apart = lot[first].MiddleDb - lot[first - 1].MiddleDb;
            double limit = LimitDb([lot[..first], .. lots.Where(l => l != lot)]);
            foreach (Level odd in lot[first..].Where(o => apart >= limit && !IsSettled(seen, o.Name)))
            {
                yield return Told(odd, lot[first - 1], first, limit);
            }
        }
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
        if (read.Length == 0)
        {
            return [];
        }

        int[] common = [.. read.Skip(1).Aggregate(Measured(read[0]), (some, c) => some.Intersect(Measured(c)))];
        return 2 * common.Length <= read[0].Readings.Length ? []
            : read.Select(c => new Level(c.Name, Sample.Median([.. common.Select(f => c.Readings.ValuesDb[f])])));
    }

    private static IEnumerable<int> Measured(ShieldingCurve curve) => Enumerable.Range(0, curve.Readings.Length)
        .Where(f => curve.Readings.Mark(f).Kind is ReadingKind.Measured or ReadingKind.Unrepeated);

    // The widest gap that leaves fewer above it than below.
    private static int First(Level[] lot) => Enumerable.Range((lot.Length / 2) + 1, lot.Length - (lot.Length / 2) - 1)
        .MaxBy(i => lot[i].MiddleDb - lot[i - 1].MiddleDb);

    private static double LimitDb(Level[][] lots)
    {
        int freedom = lots.Sum(l => Math.Max(0, l.Length - 1));
        double squares = lots.Where(l => l.Length > 1)
            .Sum(l => (l.Length - 1) * Math.Pow(Sample.StandardDeviation([.. l.Select(s => s.MiddleDb)]), 2));
        double spread = freedom == 0 ? 0 : Deviations * Math.Sqrt(squares / freedom);
        return Math.Clamp(spread, freedom < FewestFreedom ? UsualDb : LeastDb, MostDb);
    }

    private static bool IsSettled(Evidence seen, SpecimenName name)
    {
        Sweep[] own = [.. seen.Campaign.Covered.Where(c => c.Name == name).SelectMany(c => c.Block.Sweeps)];
        Sweep[] others =
        [
            .. seen.Campaign.Reference.Sweeps,
            .. seen.Campaign.Covered.Where(c => c.Name != name).SelectMany(c => c.Block.Sweeps),
        ];
        if (own.Concat(others).Any(s => s.TakenAt is null))
        {
            return false;
        }

        DateTimeOffset? begins = own.Min(s => s.TakenAt), ends = own.Max(s => s.TakenAt);
        return others.Any(s => s.TakenAt > begins && s.TakenAt < ends)
            || (others.Where(s => s.TakenAt <= begins).MaxBy(s => s.TakenAt)?.Role == SweepRole.Reference
                && others.Where(s => s.TakenAt >= ends).MinBy(s => s.TakenAt)?.Role == SweepRole.Reference);
    }

    private Finding Told(Level odd, Level next, int others, double limitDb) => new()
    {
        Code = Code,
        Severity = Severity.Warning,
        Role = SweepRole.Covered,
        Specimen = odd.Name,
        Size = new Decibels(odd.MiddleDb - next.MiddleDb),
        Bias = new Bias(odd.MiddleDb - next.MiddleDb, 0),
        Message = $"{odd.Name} shields {Amount.Db(odd.MiddleDb - next.MiddleDb)} more than any of {others} others of its lot. So "
            + "it reads too where a cable was loose while it was swept.",
        Basis = $"Medians over the frequencies at which the whole lot has values: {Amount.Db(odd.MiddleDb)} against "
            + $"{Amount.Db(next.MiddleDb)} at most; told from {Amount.Db(limitDb)} on, unless the reference or another specimen "
            + "was swept between its own sweeps, or the reference right before and right after them.",
        NextStep = $"Look whether every cable was tight; then sweep {odd.Name} once more, after another specimen or the "
            + "reference, as a placement of its own. Name the times of all sweeps (taken_at in sweeps.csv). If it reads the "
            + "same, it is the cloth.",
    };

    /// <summary>What a specimen shields in the middle of the frequencies that its lot has in common.</summary>
    private readonly record struct Level(SpecimenName Name, double MiddleDb);
}
